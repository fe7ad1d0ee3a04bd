// Questions to the service, and its refusals.

import { t } from "./text.js";

const LISTS = {
  csv: "text/csv", md: "text/markdown", txt: "text/plain",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ods: "application/vnd.oasis.opendocument.spreadsheet",
};

/** A question that the service did not answer, with the places at fault. */
export class Refusal extends Error {
  constructor(problem) {
    super(problem.detail ?? problem.title ?? t("the-service-gave-no-answer"));
    this.errors = problem.errors ?? [];
    this.status = problem.status;
  }
}

/** Answer as JSON to a GET. */
export async function getJson(address) {
  return (await ask(address, { headers: { Accept: "application/json" } })).json();
}

/** Answer as text to a GET. */
export async function getText(address, mediaType) {
  return (await ask(address, { headers: { Accept: mediaType } })).text();
}

/** Answer as JSON to a body. */
export async function postJson(address, body, signal) {
  return (await post(address, body, "application/json", signal)).json();
}

/** Answer as text to a body. */
export async function postText(address, body, mediaType, signal) {
  return (await post(address, body, mediaType, signal)).text();
}

/** Answer as a file to a body. */
export async function postBlob(address, body, mediaType) {
  return (await post(address, body, mediaType)).blob();
}

/** The plan that a list stands for, with what was assumed and what is asked. */
export async function planOfList(body, mediaType = LISTS.csv, signal) {
  const answer = await ask("/v1/plans/conversion", {
    method: "POST",
    headers: { "Content-Type": mediaType, Accept: "application/json" },
    body,
    signal,
  });
  return answer.json();
}

/** A plan as the text of a list that says everything. */
export function listOfPlan(plan) {
  return postText("/v1/plans/conversion", plan, LISTS.csv);
}

let catalogue = null;

/** The catalogue of parts: kinds, types, switches; asked once. */
export function partCatalogue() {
  catalogue ??= getJson("/v1/parts").then((answer) => answer.result);
  catalogue.catch(() => (catalogue = null));
  return catalogue;
}

/** The media type of a list by the ending of its file's name. */
export function listType(fileName) {
  return LISTS[fileName.split(".").pop().toLowerCase()];
}

/**
 * Answer to a body that takes its time: `progressed` gets each report of how far it is, from 0 to 1 or undefined.
 */
export async function postSlow(address, body, progressed, signal) {
  const response = await post(address, body, "application/x-ndjson", signal);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (;;) {
    const { value, done } = await reader.read();
    rest += value ?? "";
    const lines = rest.split("\n");
    rest = done ? "" : lines.pop();
    for (const line of lines.filter((each) => each.trim() !== "")) {
      const message = JSON.parse(line);
      if (message.answer) {
        return message.answer;
      }
      if (message.problem) {
        throw new Refusal(message.problem);
      }
      progressed(message.progress ?? message);
    }
    if (done) {
      throw new Refusal({ detail: t("the-answer-broke-off-ask") });
    }
  }
}

/** What a refusal says, with the places. */
export function explained(refused) {
  if (!(refused instanceof Refusal)) {
    throw refused;
  }
  return refused.message;
}

function post(address, body, mediaType, signal) {
  return ask(address, {
    method: "POST",
    headers: { "Content-Type": "application/json", Accept: mediaType },
    body: JSON.stringify(body),
    signal,
  });
}

async function ask(address, request) {
  let response;
  try {
    response = await fetch(address, request);
  } catch (gone) {
    if (gone.name === "AbortError") {
      throw gone;
    }
    throw new Refusal({ detail: t("the-service-does-not-answer") });
  }
  if (!response.ok) {
    throw new Refusal(await response.json().catch(() => ({ detail: t("the-service-answered", { status: response.status }) })));
  }
  return response;
}

// Questions to the service, and its refusals.

/** A question that the service did not answer, with the places at fault. */
export class Refusal extends Error {
  constructor(problem) {
    super(problem.detail ?? problem.title ?? "The service gave no answer.");
    this.errors = problem.errors ?? [];
  }
}

/** Answer as JSON to a GET. */
export async function getJson(address) {
  return (await ask(address, { headers: { Accept: "application/json" } })).json();
}

/** Answer as JSON to a body. */
export async function postJson(address, body) {
  return (await post(address, body, "application/json")).json();
}

/** Answer as text to a body. */
export async function postText(address, body, mediaType) {
  return (await post(address, body, mediaType)).text();
}

function post(address, body, mediaType) {
  return ask(address, {
    method: "POST",
    headers: { "Content-Type": "application/json", Accept: mediaType },
    body: JSON.stringify(body),
  });
}

async function ask(address, request) {
  let response;
  try {
    response = await fetch(address, request);
  } catch (gone) {
    throw new Refusal({ detail: "The service does not answer. Is it still running?" });
  }
  if (!response.ok) {
    throw new Refusal(await response.json().catch(() => ({ detail: `The service answered ${response.status}.` })));
  }
  return response;
}

// Asks with the client made from the contract: what is live in a demo plan when it should be off, its picture and its
// sheet, the contract, a table, and many lines in one run.
import {
  BulkApi, BulkOperation, ConductorsApi, Configuration, ExamplesApi, IgnitionApi, PlanFromJSON, PlansApi, ResponseError,
  ServiceApi,
} from "./client";

function found(what: string, content: string, text: string) {
  if (!content.includes(text)) {
    throw new Error(`${what} has no ${text}`);
  }
  console.log(`${what}: ${content.length} characters`);
}

async function main() {
  const service = new Configuration({ basePath: process.env.LOOMWRIGHT });
  const plans = new PlansApi(service);
  const plan = PlanFromJSON(await new ExamplesApi(service).getExample({ name: "sandpiper-unguarded-bypass" }));
  const backfeed = await plans.findBackfeed({ plan });
  for (const feed of backfeed.result.unintendedFeeds) {
    console.log(`${feed.severity}: ${feed.verdict.text}`);
  }

  const conductors = new ConductorsApi(service);
  const wire = { size: "14 AWG", lengthM: 3, currentA: 8 };
  const drop = await conductors.postVoltageDrop({ voltageDropQuestion: wire });
  console.log(`drop: ${drop.result.totalV} V`);
  const spark = await new IgnitionApi(service).getSpark({ speedRpm: 3000 });
  console.log(`spark: ${spark.result.at.marginKv} kV`);

  found("picture", (await plans.drawPlan({ plan, format: "json" })).result.svg, "<svg");
  found("sheet", await (await plans.printSheet({ sheetQuestion: { plan } })).text(), "<html");
  found("contract", await (await new ServiceApi(service).getContract()).text(), "openapi: 3.1");
  // Forms beside JSON, asked for by `format`, are read without a model.
  found("csv", await (await plans.solvePlanRaw({ plan, format: "csv" })).raw.text(), "step,what,id");

  const lines = [wire, { ...wire, lengthM: 6 }].map(line => JSON.stringify(line)).join("\n");
  const bulk = await new BulkApi(service).runBulk({ operation: BulkOperation.VoltageDrop, body: lines });
  found("bulk", await bulk.text(), '"summary"');
  try {
    await conductors.postVoltageDrop({ voltageDropQuestion: { ...wire, size: "16" } });
  } catch (refused) {
    if (!(refused instanceof ResponseError)) {
      throw refused;
    }
    console.log(`refused: ${refused.response.status}`);
    return;
  }
  throw new Error("16 may be a gauge or an area");
}

main().catch(error => {
  console.error(error);
  process.exitCode = 1;
});

// What is fed though it should not be in a demo plan, asked with the client made from the contract.
import { ConductorsApi, Configuration, ExamplesApi, PlanFromJSON, PlansApi, ResponseError } from "./client";

async function main() {
  const service = new Configuration({ basePath: process.env.LOOMWRIGHT });
  const example = await new ExamplesApi(service).getExample({ name: "sandpiper-unguarded-bypass" });
  const backfeed = await new PlansApi(service).findBackfeed({ plan: PlanFromJSON(example) });
  for (const feed of backfeed.result.unintendedFeeds) {
    console.log(`${feed.severity}: ${feed.verdict}`);
  }

  const conductors = new ConductorsApi(service);
  const wire = { size: "14 AWG", lengthM: 3, currentA: 8 };
  const drop = await conductors.postVoltageDrop({ voltageDropQuestion: wire });
  console.log(`drop: ${drop.result.totalV} V`);
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

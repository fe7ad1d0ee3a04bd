"""Asks with the client made from the contract: what is live in a demo plan when it should be off, its picture and its
sheet, the contract, a table, and many lines in one run."""

import json
import os

import openapi_client as loomwright


def found(what: str, content: bytes, text: str) -> None:
    content = bytes(content).decode()
    assert text in content, f"{what} has no {text}"
    print(f"{what}: {len(content)} characters")


with loomwright.ApiClient(loomwright.Configuration(host=os.environ["LOOMWRIGHT"])) as client:
    plans = loomwright.PlansApi(client)
    example = loomwright.ExamplesApi(client).get_example("sandpiper-unguarded-bypass")
    plan = loomwright.Plan.from_dict(example)
    for feed in plans.find_backfeed(plan).result.unintended_feeds:
        print(f"{feed.severity}: {feed.verdict.text}")

    conductors = loomwright.ConductorsApi(client)
    wire = loomwright.VoltageDropQuestion(size="14 AWG", length_m=3, current_a=8)
    print(f"drop: {conductors.post_voltage_drop(wire).result.total_v} V")
    print(f"spark: {loomwright.IgnitionApi(client).get_spark(speed_rpm=3000).result.at.margin_kv} kV")

    found("picture", plans.draw_plan(plan).result.svg.encode(), "<svg")
    found("sheet", plans.print_sheet(loomwright.SheetQuestion(plan=plan)), "<html")
    found("contract", loomwright.ServiceApi(client).get_contract(), "openapi: 3.1")
    # Forms beside JSON, asked for by `format`, are read without a model.
    found("csv", plans.solve_plan_without_preload_content(plan, format="csv").read(), "step,what,id")

    lines = "\n".join(json.dumps({"size": "14 AWG", "lengthM": metres, "currentA": 8}) for metres in (3, 6))
    found("bulk", loomwright.BulkApi(client).run_bulk(loomwright.BulkOperation.VOLTAGE_MINUS_DROP, lines), '"summary"')
    try:
        conductors.post_voltage_drop(loomwright.VoltageDropQuestion(size="16", length_m=3, current_a=8))
        raise AssertionError("16 may be a gauge or an area")
    except loomwright.ApiException as refused:
        print(f"refused: {refused.status}")

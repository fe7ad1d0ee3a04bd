"""What is fed though it should not be in a demo plan, asked with the client made from the contract."""

import os

import openapi_client as loomwright

with loomwright.ApiClient(loomwright.Configuration(host=os.environ["LOOMWRIGHT"])) as client:
    example = loomwright.ExamplesApi(client).get_example("sandpiper-unguarded-bypass")
    plan = loomwright.Plan.from_dict(example)
    for feed in loomwright.PlansApi(client).find_backfeed(plan).result.unintended_feeds:
        print(f"{feed.severity.value}: {feed.verdict}")

    conductors = loomwright.ConductorsApi(client)
    wire = loomwright.VoltageDropQuestion(size="14 AWG", length_m=3, current_a=8)
    print(f"drop: {conductors.post_voltage_drop(wire).result.total_v} V")
    try:
        conductors.post_voltage_drop(loomwright.VoltageDropQuestion(size="16", length_m=3, current_a=8))
        raise AssertionError("16 may be a gauge or an area")
    except loomwright.ApiException as refused:
        print(f"refused: {refused.status}")

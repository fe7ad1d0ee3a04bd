package loomwright.diagnosis;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import loomwright.circuit.Battery;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.list.ListLimits;
import loomwright.list.PlanList;
import loomwright.list.TextList;
import loomwright.operation.UsualIntent;

/** What a diagnosis is measured on: the demo plans, the templates, and vehicles made at random. */
final class BenchmarkPlans {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final int GENERATED = 3;
    private static final int LEAST_PARTS = 12;
    private static final int MORE_PARTS = 6;

    private BenchmarkPlans() {}

    /** By name, with nothing unsaid about when consumers should be live. */
    static Map<String, Plan> of(long seed) {
        Map<String, Plan> plans = new TreeMap<>();
        Plans.exampleNames().forEach(name -> plans.put(name, Plans.example(name)));
        text("/templates/index")
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.trim().split("\\s+", 2)[0])
                .forEach(name -> plans.put("template " + name, template(name)));
        for (int i = 0; i < GENERATED; i++) {
            plans.put("generated " + i, RandomVehicle.of(seed + i, LEAST_PARTS + MORE_PARTS * i));
        }
        plans.values().removeIf(plan -> plan.listParts(Battery.class).isEmpty());
        plans.replaceAll((name, plan) -> UsualIntent.complete(plan));
        return plans;
    }

    private static Plan template(String name) {
        return MAPPER.convertValue(
                PlanList.read(TextList.read(text("/templates/" + name + ".csv"), ListLimits.defaults()))
                        .plan(),
                Plan.class);
    }

    private static String text(String resource) {
        try (InputStream in = BenchmarkPlans.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(resource + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

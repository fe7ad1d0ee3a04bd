package loomwright.list;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Plan;
import loomwright.message.MessageCode;

/** Reads lists for tests. */
final class Lists {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.USE_DEFAULTS))
            .build();

    private Lists() {}

    static byte[] file(String name) {
        try (InputStream in = Lists.class.getResourceAsStream("/lists/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static ListReading named(String name) {
        return of(TextList.decode(file(name)));
    }

    static ListReading of(String... lines) {
        return PlanList.read(TextList.read(String.join("\n", lines), ListLimits.defaults()));
    }

    static Plan plan(ListReading reading) {
        return MAPPER.convertValue(reading.plan(), Plan.class);
    }

    @SuppressWarnings("unchecked")
    static Map<String, Object> tree(Plan plan) {
        return (Map<String, Object>) MAPPER.convertValue(plan, Map.class);
    }

    static List<MessageCode> questions(ListReading reading) {
        return reading.questions().stream().map(q -> q.message().code()).toList();
    }

    static List<MessageCode> assumptions(ListReading reading) {
        return reading.assumptions().stream().map(a -> a.message().code()).toList();
    }

    static String ends(Plan plan, String wire) {
        return plan.findWire(wire).map(w -> w.from() + " " + w.to()).orElseThrow();
    }
}

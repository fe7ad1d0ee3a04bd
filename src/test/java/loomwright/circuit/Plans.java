package loomwright.circuit;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** The plans that tests work on: the examples of the service, those under {@code plans/} of the tests, and short texts. */
public final class Plans {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private Plans() {}

    /** The examples that the service hands out, as its index names them. */
    public static List<String> exampleNames() {
        return new String(bytes("/examples/index"), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.split("\\s+", 2)[0])
                .toList();
    }

    /** An example that the service hands out. */
    public static Plan example(String name) {
        return resource("/examples/" + name + ".json");
    }

    /** A plan of the tests' own. */
    public static Plan named(String name) {
        return resource("/plans/" + name + ".json");
    }

    /** A 12 V plan from the contents of its parts and wires, single quotes for double ones. */
    public static Plan of(String parts, String wires) {
        return of(12, "negative", parts, wires);
    }

    public static Plan of(double nominalV, String earth, String parts, String wires) {
        return parse("{'schema':'loomwright/plan/1','name':'test','system':{'nominalVoltageV':" + nominalV
                + ",'earthPolarity':'" + earth + "'},'parts':[" + parts + "],'wires':[" + wires + "]}");
    }

    public static Plan parse(String json) {
        try {
            return MAPPER.readValue(json.replace('\'', '"'), Plan.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The plan as plain maps, for tests that change it. */
    public static Map<?, ?> tree(Plan plan) {
        return MAPPER.convertValue(plan, Map.class);
    }

    private static Plan resource(String path) {
        try {
            return MAPPER.readValue(bytes(path), Plan.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] bytes(String path) {
        try (InputStream in = Plans.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package loomwright.service.input;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import loomwright.circuit.Plan;
import loomwright.message.Untranslated;
import loomwright.service.input.Contract.Operation;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** Problem documents in a language that puts every text of the catalogue in brackets: nothing else is written. */
class ProblemLanguageTest {
    private static final Contract CONTRACT = Contract.load();
    private static final Json JSON = new Json(ServiceLimits.DEFAULT);
    private static final ContractErrors ERRORS = new ContractErrors(CONTRACT);
    private static final Bodies BODIES = new Bodies(JSON, ServiceLimits.DEFAULT, ERRORS, true);
    private static final Queries QUERIES = new Queries(JSON, ERRORS);
    private static final String NAMES = names(CONTRACT.document());
    /** Wrong wherever a number, a text, a list or an object belongs, and out of every range. */
    private static final List<String> WRONG = List.of("[[]]", "{\"no-such\":{}}", "\"1\"", "-1e99", "true");

    private static final String PLAN =
            "{\"schema\":\"loomwright/plan/1\",\"name\":\"x\",\"system\":{\"nominalVoltageV\":12},\"parts\":[%s],\"wires\":[%s]}";

    @Test
    void everyTextOfAProblemIsOfTheCatalogue() {
        Map<String, Set<String>> found = new TreeMap<>();
        List<Operation> operations =
                CONTRACT.operations().stream().filter(o -> o.body() != null).toList();
        for (Operation operation : operations) {
            for (String body : bodies(operation)) {
                read(found, operation.path(), body, Object.class, operation);
            }
        }
        Operation solution = operations.stream()
                .filter(o -> o.path().equals("/v1/plans/solution"))
                .findFirst()
                .orElseThrow();
        for (String body : plans()) {
            read(found, "a plan", body, Plan.class, solution);
        }
        CONTRACT.operations().forEach(operation -> ask(found, operation));
        assertThat(found).isEmpty();
    }

    private static List<String> bodies(Operation operation) {
        List<String> names = StreamSupport.stream(
                        ((Iterable<String>) () ->
                                        operation.bodyForm().path("properties").fieldNames())
                                .spliterator(),
                        false)
                .toList();
        List<String> bodies = new ArrayList<>(List.of(
                "", "{", "{}", "[]", "[{}]", "1 2", "{\"plan\":{}}", PLAN.formatted("", ""), "{\"a\":1,\"a\":2}"));
        for (String wrong : WRONG) {
            bodies.add(
                    names.stream().map(name -> '"' + name + "\":" + wrong).collect(Collectors.joining(",", "{", "}")));
        }
        return bodies;
    }

    private static List<String> plans() {
        String battery = "{\"kind\":\"battery\",\"id\":\"B\"}";
        String loose = "{\"id\":\"W1\",\"from\":\"B.plus\",\"to\":\"B.left\",\"resistanceOhm\":1},"
                + "{\"id\":\"W1\",\"from\":\"a.31\",\"to\":\"b.31\",\"lengthM\":1,\"lengthFt\":1}";
        String parts = Stream.of("lamp", "load", "coil", "relay", "solenoid", "switch", "motor", "no-such")
                .map(kind -> "{\"kind\":\"" + kind + "\",\"id\":\"B\"}")
                .collect(Collectors.joining(","));
        return List.of(
                PLAN.formatted(battery, loose),
                PLAN.formatted(battery, loose.replace("\"lengthM\":1,\"lengthFt\":1", "\"resistanceOhm\":1")),
                PLAN.formatted(parts, ""),
                PLAN.formatted("{\"kind\":\"load\",\"id\":\"L\",\"powerW\":1,\"currentA\":1}", ""),
                PLAN.formatted("{\"kind\":\"lamp\",\"id\":\"L\",\"ratedV\":12,\"ratedW\":5}", ""));
    }

    private static void read(
            Map<String, Set<String>> found, String what, String body, Class<?> type, Operation operation) {
        Contract.Schema schema = operation.body();
        check(
                found,
                what + " " + body,
                body,
                () -> schema == null ? null : BODIES.read(body.getBytes(StandardCharsets.UTF_8), type, schema));
    }

    private static void ask(Map<String, Set<String>> found, Operation operation) {
        Map<String, List<String>> query = operation.parameters().stream()
                .filter(parameter -> parameter.in().equals("query"))
                .collect(Collectors.toMap(Contract.Parameter::name, parameter -> List.of("§")));
        Map<String, List<String>> twice = Map.of("no-such", List.of("1"), "format", List.of("json", "text"));
        for (Map<String, List<String>> texts : List.of(query, twice, Map.<String, List<String>>of())) {
            check(found, operation.path() + " " + texts, texts + "", () -> QUERIES.parse(texts, operation));
        }
    }

    /** The names and words of the contract, which what a request accepts lists: they are not ours to translate. */
    private static String names(JsonNode node) {
        StringBuilder names = new StringBuilder();
        node.path("properties")
                .fieldNames()
                .forEachRemaining(name -> names.append(name).append(' '));
        node.at("/discriminator/mapping")
                .fieldNames()
                .forEachRemaining(name -> names.append(name).append(' '));
        node.path("enum").forEach(word -> names.append(word.asText()).append(' '));
        if (node.has("in")) {
            names.append(node.path("name").asText()).append(' ');
        }
        node.forEach(child -> names.append(names(child)));
        return names.toString();
    }

    private static void check(Map<String, Set<String>> found, String what, String given, Callable<?> read) {
        Set<String> words = Untranslated.words(() -> said(read), given + NAMES);
        if (!words.isEmpty()) {
            found.put(what.substring(0, Math.min(what.length(), 200)), words);
        }
    }

    private static String said(Callable<?> read) {
        try {
            read.call();
            return "";
        } catch (ProblemException problem) {
            return problem.type().title() + " " + problem.getMessage()
                    + problem.errors().stream().map(ProblemLanguageTest::said).collect(Collectors.joining());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (Exception ours) {
            throw new IllegalStateException(ours);
        }
    }

    private static String said(Problem.Entry entry) {
        return Stream.of(entry.text(), entry.accepted(), entry.place(), entry.value())
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" ", " ", " "));
    }
}

package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.http.Method;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import loomwright.service.ContractExamples.Example;
import loomwright.service.limits.ServiceLimits;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Each status that the contract lists for an operation is provoked, by changing a good example in one respect. */
class EveryStatusTest {
    /** Cannot be provoked from outside; {@link FaultsOfOursTest} makes them with an endpoint that fails,
     * {@link AccessControlTest} with an operator who cares. */
    private static final Map<Integer, String> NOT_FROM_OUTSIDE = Map.of(
            500,
            "a fault of ours",
            501,
            "a machine without fonts",
            503,
            "a limit of time",
            401,
            "a service that asks for keys",
            429,
            "a service with a limit of pace",
            408,
            "silence longer than the idle limit");

    private static final Map<Integer, Function<Example, Response>> PROVOKED = Map.of(
            200, example -> example.send(example.request()),
            304,
                    example -> example.send(example.request()
                            .header(
                                    "If-None-Match",
                                    example.send(example.request()).header("ETag"))),
            400, example -> send(example, example.request(), addedTo(example.url(), "no-such-parameter=1")),
            404, EveryStatusTest::unknownName,
            406, example -> example.send(example.request().accept("image/x-no-such")),
            413, EveryStatusTest::tooLarge,
            414, example -> send(example, example.request(), addedTo(example.url(), "x=" + "y".repeat(9_000))),
            415,
                    example -> send(
                            example,
                            LiveService.ask().contentType("text/x-no-such").body("a,b"),
                            example.url()),
            422, EveryStatusTest::unprocessable,
            431, example -> example.send(example.request().header("X-Long", "y".repeat(9_000))));

    @TestFactory
    Stream<DynamicTest> eachListedStatusIsAnswered() {
        return LiveService.CONTRACT.operations().stream().flatMap(operation -> {
            Example good = ContractExamples.good(operation);
            return Stream.of(statuses(good))
                    .filter(status -> !NOT_FROM_OUTSIDE.containsKey(status))
                    .map(status -> DynamicTest.dynamicTest(operation.id() + " " + status, () -> {
                        Function<Example, Response> provoke =
                                Objects.requireNonNull(PROVOKED.get(status), "no way to provoke " + status);
                        assertThat(provoke.apply(good).statusCode()).isEqualTo(status);
                        assertThat(LiveService.FILTER.covered()).contains(operation.id() + " " + status);
                    }));
        });
    }

    private static Integer[] statuses(Example example) {
        Stream.Builder<Integer> statuses = Stream.builder();
        JsonNode operation = example.node();
        operation.path("responses").fieldNames().forEachRemaining(status -> {
            if (status.equals("default")) {
                Stream.of(414, 431, 500).forEach(statuses::add);
                if (operation.has("requestBody")) {
                    Stream.of(413, 415).forEach(statuses::add);
                }
                // A file of a page comes as it is, whatever is accepted.
                if (!example.operation().path().endsWith("{file}")) {
                    statuses.add(406);
                }
            } else {
                statuses.add(Integer.valueOf(status));
            }
        });
        return statuses.build().toArray(Integer[]::new);
    }

    private static Response send(Example example, RequestSpecification request, String url) {
        return request.request(Method.valueOf(example.operation().method()), url);
    }

    private static Response unknownName(Example example) {
        return send(example, example.request(), example.operation().path().replaceAll("\\{[^}]+}", "no-such"));
    }

    /** An operation that lists 422 has an example that is answered so. */
    private static Response unprocessable(Example good) {
        Example bad = ContractExamples.all().stream()
                .filter(example ->
                        example.operation().id().equals(good.operation().id())
                                && example.responses().containsKey(422))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no example with 422"));
        return bad.send(bad.request());
    }

    private static String addedTo(String url, String parameter) {
        return url + (url.contains("?") ? "&" : "?") + parameter;
    }

    /** Lines of a bulk run have no end, and lists of cars are answered as they arrive; a workbook is read whole. */
    private static Response tooLarge(Example example) {
        return example.operation().id().equals("runBulk")
                ? LiveService.ask()
                        .contentType("application/vnd.oasis.opendocument.spreadsheet")
                        .body(large().getBytes(StandardCharsets.UTF_8))
                        .post("/v1/bulk/review")
                : send(
                        example,
                        LiveService.ask().contentType("application/json").body(large()),
                        example.url());
    }

    private static String large() {
        return String.format(Locale.ROOT, "{\"name\":\"%s\"}", "x".repeat(ServiceLimits.DEFAULT.bodyBytes()));
    }
}

package loomwright.service.limits;

import loomwright.answer.InputErrors;

/**
 * How much one request may ask of the service, and how long things may take.
 *
 * @param bodyBytes largest request body
 * @param headBytes largest request line and headers together; a longer URI is 414, longer headers are 431
 * @param threads most requests worked on at once
 * @param connections most connections open at once; more wait to be accepted
 */
public record ServiceLimits(int bodyBytes, int headBytes, JsonLimits json, int threads, int connections, Waits waits) {

    public static final ServiceLimits DEFAULT = new ServiceLimits(
            4_000_000,
            8_192,
            new JsonLimits(32, 20_000, 200, 40, 1_000_000),
            64,
            2_000,
            new Waits(30_000, 60_000, 0, 10_000));

    public ServiceLimits {
        new InputErrors()
                .range("/bodyBytes", bodyBytes, 100, 1_000_000_000)
                .range("/headBytes", headBytes, 1_024, 1_000_000)
                .range("/nestingDepth", json.nestingDepth(), 8, 1_000)
                .range("/stringChars", json.stringChars(), 100, 100_000_000)
                .range("/nameChars", json.nameChars(), 50, 50_000)
                .range("/numberChars", json.numberChars(), 25, 1_000)
                .range("/tokens", json.tokens(), 100, 100_000_000)
                .range("/threads", threads, 8, 1_000)
                .range("/connections", connections, 8, 1_000_000)
                .range("/idleMs", waits.idleMs(), 100, 3_600_000)
                .range("/arrivalMs", waits.arrivalMs(), 100, 3_600_000)
                .range("/drainMs", waits.drainMs(), 0, 3_600_000)
                .range("/stopMs", waits.stopMs(), 0, 3_600_000)
                .reject();
    }

    /**
     * How large the JSON of a body may be.
     *
     * @param nestingDepth deepest nesting of a JSON body
     * @param stringChars longest text in a JSON body
     * @param nameChars longest property name in a JSON body
     * @param numberChars longest number in a JSON body
     * @param tokens most names, values and brackets in a JSON body
     */
    public record JsonLimits(int nestingDepth, int stringChars, int nameChars, int numberChars, int tokens) {}

    /**
     * How long the service waits.
     *
     * @param idleMs how long a connection may be silent, in ms
     * @param arrivalMs how long a body may take to arrive, in ms; bulk runs aside
     * @param drainMs how long a stop goes on serving after it has said that the service is not ready, in ms
     * @param stopMs how long a stop waits for requests in flight, in ms
     */
    public record Waits(int idleMs, int arrivalMs, int drainMs, int stopMs) {}
}

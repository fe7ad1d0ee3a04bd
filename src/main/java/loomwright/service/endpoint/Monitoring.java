package loomwright.service.endpoint;

/** What a running service knows of itself. */
public record Monitoring(Metrics metrics, Readiness readiness) {
    public static Monitoring fresh() {
        return new Monitoring(new Metrics(), new Readiness());
    }
}

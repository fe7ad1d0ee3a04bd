package loomwright.service;

/** What a running service knows of itself. */
record Vitals(Metrics metrics, Readiness readiness) {
    static Vitals fresh() {
        return new Vitals(new Metrics(), new Readiness());
    }
}

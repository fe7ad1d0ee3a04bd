package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Gauges behind a stabiliser that does not regulate. */
class GaugeVoltagesTest {
    private static Plan gauge(String earth) {
        return plan(
                "{'kind':'stabiliser','id':'box'},"
                        + "{'kind':'load','id':'gauge','resistanceOhm':60,'operateV':1,'meantLive':['run','running']},"
                        + "{'kind':'resistor','id':'sender','resistanceOhm':90}",
                "{'id':'W1','from':'battery.plus','to':'box.B','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'box.I','to':'gauge.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'gauge.b','to':'sender.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'sender.b','to':'body.31','resistanceOhm':0.01}" + earth);
    }

    /** A mean of 10 V from a supply of 12.6 V; without the earth the contact stays closed and all of it gets through. */
    @Test
    void withoutItsEarthAllGaugesReadHigh() {
        Finding finding = get(gauge(""), FindingCode.GAUGES_READ_HIGH);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(figure(finding, "outputV")).isGreaterThan(12.3);
        assertThat(figure(finding, "ratedV")).isCloseTo(10, within(1e-9));
    }

    @Test
    void withItsEarthTheyReadRight() {
        assertThat(find(
                        gauge(",{'id':'W5','from':'box.E','to':'body.31','resistanceOhm':0.01}"),
                        FindingCode.GAUGES_READ_HIGH))
                .isEmpty();
    }
}

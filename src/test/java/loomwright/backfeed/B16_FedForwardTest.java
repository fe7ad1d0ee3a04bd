package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** Feature 16: a load fed through its own closed switch in a condition that nobody listed is a question. */
class B16_FedForwardTest {
    /** The wipers also run while cranking: a question to the owner, no danger. */
    @Test
    void aLoadFedForwardThroughItsOwnClosedSwitchIsANote() {
        Plan plan = B17_WhatIsNormalTest.car(
                B17_WhatIsNormalTest.contact("wiper-switch")
                        + "{'kind':'motor','id':'wiper','resistanceOhm':4,'meantLive':['run','running'],"
                        + "'meantLiveWhen':[{'switches':{'wiper-switch':['on']}}]}",
                "key.15 wiper-switch.a,wiper-switch.b wiper.33,wiper.32 body.31");
        UnintendedFeed feed = Searched.of(plan).feed("wiper");
        assertThat(feed.occurrences())
                .extracting(BackfeedReport.Occurrence::step)
                .containsOnly(Step.CRANK);
        assertThat(feed.severity().name()).isEqualTo("NOTE");
        assertThat(feed.remedies()).isEmpty();
    }
}

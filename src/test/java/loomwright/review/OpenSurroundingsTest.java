package loomwright.review;

import static loomwright.message.MessageFinder.word;
import static loomwright.review.Reviews.answer;
import static loomwright.review.Reviews.fused;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.circuit.Plan;
import loomwright.message.Message;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;

/** What a plan leaves open about a wire is tried at its other end; what turns a verdict is told with what settles it. */
class OpenSurroundingsTest {
    /** 1 mm2 may carry 16.9 A alone at 30 C, 10 A in a loom of five: 0.89 and 1.5 of its fuse. */
    @Test
    void aFuseThatSuitsOnlyAsAssumedIsSaidInTheWorking() {
        Message line = answer(fused(15, "1 mm2", 1, 2)).working().stream()
                .filter(each -> each.code() == ReviewText.FUSE_SUITS_BUT)
                .findFirst()
                .orElseThrow();
        assertThat(word(line, "fuse")).isEqualTo("F1");
        assertThat(word(line, "wire")).isEqualTo("W2");
        assertThat(answer(fused(5, "2.5 mm2", 1, 4)).working())
                .extracting(Message::code)
                .doesNotContain(ReviewText.FUSE_SUITS_BUT);
    }

    @Test
    void aFindingThatRestsOnTheOpenSaysWhatSettlesIt() {
        Finding open = get(fused(20, "1 mm2", 1, 2), FindingCode.FUSE_TOO_LARGE);
        assertThat(open.restsOn()).extracting(Message::code).containsExactly(ReviewText.DEPENDS_ON);
        Finding settled = get(settled(), FindingCode.FUSE_TOO_LARGE);
        assertThat(settled.restsOn()).isEqualTo(List.of());
    }

    private static Plan settled() {
        return plan(
                "{'kind':'fuse','id':'F1','ratingA':20},{'kind':'load','id':'lamp','resistanceOhm':2,"
                        + "'meantLive':['run']}",
                "{'id':'W1','from':'battery.plus','to':'F1.a','size':'25 mm2','lengthM':0.1},"
                        + "{'id':'W2','from':'F1.b','to':'lamp.a','size':'0.5 mm2','lengthM':1,"
                        + "'insulationTemperatureC':80,'bundleCount':5},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
    }
}

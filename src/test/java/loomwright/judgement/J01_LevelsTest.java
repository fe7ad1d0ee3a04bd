package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import loomwright.circuit.BatteryLaw;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels of a judged ratio, drops, loads, battery and starter. */
class J01_LevelsTest {
    @Test
    void aLevelNeverJumpsByTwoWithinTheBand() {
        assertThat(new Ratio(0.9).borderline()).isFalse();
        assertThat(new Ratio(0.95).borderline()).isTrue();
        assertThat(new Ratio(0.95).level(1.5)).isEqualTo(Level.FITS);
        assertThat(new Ratio(1.05).level(1.5)).isEqualTo(Level.NOTE);
        assertThat(new Ratio(1.05).borderline()).isTrue();
        assertThat(new Ratio(1.2).level(1.5)).isEqualTo(Level.WARNING);
        assertThat(new Ratio(1.2).borderline()).isFalse();
        assertThat(new Ratio(1.6).level(1.5)).isEqualTo(Level.DANGER);
    }

    @Test
    void moreDropIsNeverJudgedMilder() {
        Random random = new Random(19);
        for (DropRule rule : DropRule.values()) {
            for (int i = 0; i < 200; i++) {
                double low = 3 * random.nextDouble();
                double high = low + random.nextDouble();
                assertThat(rule.judge(high, 12)
                                .level()
                                .worse(rule.judge(low, 12).level()))
                        .isEqualTo(rule.judge(high, 12).level());
            }
        }
    }

    /** So that no size chosen by one rule can fail by the other. */
    @Test
    void aNewWireIsNeverSizedForMoreThanWhatIsAFinding() {
        for (DropRule rule : DropRule.values()) {
            for (double nominalV : new double[] {6, 12, 24}) {
                assertThat(rule.newWireV(nominalV)).isLessThanOrEqualTo(rule.findingV(nominalV));
                assertThat(rule.goodV(nominalV)).isLessThanOrEqualTo(rule.findingV(nominalV));
            }
        }
    }

    /** ABYC E-11, 11.14.2.6: 3 % for feeders and electronics, 10 % for other circuits and ordinary lighting. */
    @Test
    void percentagesAreThoseOfBoatPractice() {
        assertThat(DropRule.ELECTRONICS.goodV(12)).isEqualTo(0.03 * 12, within(1e-12));
        assertThat(DropRule.GENERAL.findingV(12)).isEqualTo(0.10 * 12, within(1e-12));
        assertThat(DropRule.SMALL_LAMP.findingV(24)).isEqualTo(0.10 * 24, within(1e-12));
    }

    /** US Army TM 5-2420-230-24-2: 1.0 V at 12 V, 2.0 V at 24 V. */
    @Test
    void starterControlScalesAsTheManualDoes() {
        assertThat(DropRule.STARTER_CONTROL.findingV(24)).isEqualTo(2.0);
    }

    @Test
    void chargingKnowsANoteBeforeTheWarning() {
        assertThat(DropRule.CHARGING.judge(0.25, 12).level()).isEqualTo(Level.FITS);
        assertThat(DropRule.CHARGING.judge(0.4, 12).level()).isEqualTo(Level.NOTE);
        assertThat(DropRule.CHARGING.judge(0.55, 12).level()).isEqualTo(Level.WARNING);
    }

    @Test
    void noShareOfVoltsMakesALoadWorkLess() {
        for (LoadKind kind : LoadKind.values()) {
            Strength last = Strength.DEAD;
            for (int i = 0; i <= 120; i++) {
                Strength now = kind.at(i / 100.0);
                assertThat(now).isLessThanOrEqualTo(last);
                last = now;
            }
            assertThat(last).isEqualTo(Strength.WORKS);
        }
    }

    @Test
    void aRelayHoldsBetweenItsFiguresAndNeverCreeps() {
        assertThat(LoadKind.RELAY.at(8.1 / 12)).isEqualTo(Strength.WORKS);
        assertThat(LoadKind.RELAY.at(5.0 / 12)).isEqualTo(Strength.WEAK);
        assertThat(LoadKind.RELAY.at(1.4 / 12)).isEqualTo(Strength.DEAD);
        assertThat(LoadKind.RELAY.at(1.2 / 12, 7.2 / 12, 1.0 / 12)).isEqualTo(Strength.WEAK);
    }

    /** Handbooks: 0.9 of the volts, 70 % of the light; 5 % too much halves the life (lamp maker). */
    @Test
    void lightAndLifeOfAFilament() {
        assertThat(LampLaw.lightFraction(0.9)).isEqualTo(0.70, within(0.01));
        assertThat(LampLaw.lifeFraction(1.05)).isEqualTo(0.5, within(0.05));
        assertThat(LampLaw.lightFraction(10.84 / LampLaw.testV(12, 55))).isEqualTo(0.51, within(0.01));
    }

    /** Rates of charge at 14.2 V: Ah/60, Ah/15, Ah/7, Ah/3. */
    @Test
    void aBatteryTakesWhatPracticeKnows() {
        double[][] chargeAndShare = {{1, 60}, {0.9, 15}, {0.8, 7}, {0.5, 3}};
        for (double[] row : chargeAndShare) {
            double takenA = (14.2 - BatteryLaw.emfV(row[0], 25, 12)) / BatteryLaw.chargeOhm(60, row[0], 12);
            assertThat(takenA).isEqualTo(60 / row[1], within(0.15 * 60 / row[1]));
        }
    }

    /** SAE cranking test: 7.2 V at the cold cranking current and -18 C, from 12.5 V. */
    @Test
    void aNewBatteryPassesTheTestItIsRatedBy() {
        double emfV = BatteryLaw.emfV(1, -18, 12);
        assertThat(emfV - 400 * BatteryLaw.dischargeOhm(400, -18, 12)).isEqualTo(7.2, within(0.05));
        assertThat(BatteryLaw.dischargeOhm(400, 27, 6)).isEqualTo(BatteryLaw.dischargeOhm(400, 27, 12) / 2);
    }

    /** US Army TM 10-3930-671-24: 0.20 V for each 100 A. */
    @Test
    void starterCablesByOhms() {
        assertThat(CrankingRule.judgeCables(0.20 / 100, 150, false, 12).level()).isEqualTo(Level.FITS);
        assertThat(CrankingRule.judgeCables(0.25 / 100, 150, false, 12).level()).isEqualTo(Level.WARNING);
    }

    /** Technical manual of an engine with a 50 A alternator, hot: 16 A at 1300, 41 at 2500, 48 at 5000. */
    @Test
    void anAlternatorGivesByItsSpeed() {
        assertThat(50 * ChargingRule.outputFraction(1300)).isEqualTo(16, within(1.0));
        assertThat(50 * ChargingRule.outputFraction(2500)).isEqualTo(41, within(2.0));
        assertThat(ChargingRule.outputFraction(600)).isZero();
        assertThat(ChargingRule.idleA(50)).isEqualTo(16, within(1.0));
    }

    /** Regulated volts of service specifications, 13.7 to 14.7 V at 12 V, are right at 6, 12 and 24 V; others are not. */
    @ParameterizedTest
    @CsvSource({
        "12, 13.7, FITS",
        "12, 14.7, FITS",
        "6, 7.1, FITS",
        "24, 28.4, FITS",
        "12, 13.4, NOTE",
        "12, 12.8, WARNING",
        "6, 7.6, WARNING",
        "24, 31.2, DANGER",
        "6, 14.2, DANGER"
    })
    void chargingVoltsByTheirBand(double nominalV, double chargingV, Level expected) {
        assertThat(ChargingRule.judge(chargingV, nominalV).level()).isEqualTo(expected);
    }
}

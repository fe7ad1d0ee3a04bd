package loomwright.circuit;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * Anything else that takes current from a to b: constant ohms, amps or watts (exactly one of them) between a minimum and
 * a maximum voltage, nothing outside.
 *
 * @param switchOnOhm what it is in the instant in which it is switched on: a heater or glow plug still cold, a converter that charges its
 *     capacitors; absent if it is then as always
 * @param plus the terminal that must be positive, a or b, for a polarised one, which takes nothing the other way round; absent: either
 *     way. A polarised one has a minimum of half the nominal voltage unless said
 * @param operateV volts from which it works; absent: the usual figure
 * @param releaseV volts below which it surely does not; absent: the usual figure
 * @param meantLive conditions in which it is meant to work; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("load")
public record Load(
        String id,
        @Nullable String label,
        @JsonUnwrapped LoadDraw draw,
        @Nullable Double switchOnOhm,
        @Nullable String plus,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements TwoEndedConsumer {
    /** Share of its rated volts from which a load works that states no limit of its own (common practice, no source). */
    public static final double WORKS_FROM = 0.6;

    private static final double IDLE_SHARE = 1e-6;

    public Load {
        InputErrors faults = Bounds.part(id, label)
                .check(
                        Stream.of(draw.resistanceOhm(), draw.currentA(), draw.powerW())
                                        .filter(Objects::nonNull)
                                        .count()
                                == 1,
                        InputError.Code.CONTRADICTION,
                        "",
                        null,
                        Accepted.EXACTLY_ONE,
                        texts("names", List.of("resistanceOhm", "currentA", "powerW")));
        Bounds.resistance(faults, "/resistanceOhm", draw.resistanceOhm());
        Bounds.current(faults, "/currentA", draw.currentA());
        Bounds.power(faults, "/powerW", draw.powerW());
        Bounds.voltage(faults, "/minimumV", draw.minimumV());
        Bounds.voltage(faults, "/maximumV", draw.maximumV());
        Bounds.resistance(faults, "/switchOnOhm", switchOnOhm);
        faults.check(
                draw.minimumV() == null || draw.maximumV() == null || draw.minimumV() < draw.maximumV(),
                InputError.Code.CONTRADICTION,
                "/maximumV",
                draw.maximumV(),
                Accepted.MORE_THAN,
                arg("name", "minimumV"),
                plain("limit", Bounds.orElse(draw.minimumV(), 0)));
        TwoEndedConsumer.check(faults, plus, meantLive, meantLiveWhen, operateV, releaseV)
                .reject();
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Load withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Load(id, label, draw, switchOnOhm, plus, operateV, releaseV, conditions, when);
    }

    /** What it is in the instant in which it is switched on; itself if that is not stated. */
    public Load switchedOn() {
        return switchOnOhm == null
                ? this
                : new Load(
                        id,
                        label,
                        new LoadDraw(switchOnOhm, null, null, null, null),
                        null,
                        plus,
                        operateV,
                        releaseV,
                        meantLive,
                        meantLiveWhen);
    }

    /** The voltage below which it takes nothing, in a given vehicle. */
    public double minimumV(VehicleSystem system) {
        double usualV = system.scaledFrom12V(6);
        // Above its most it takes nothing, so the usual least would leave it no volts at all.
        double leastV = draw.maximumV() != null && draw.maximumV() <= usualV ? draw.maximumV() / 2 : usualV;
        return Bounds.orElse(draw.minimumV(), draw.powerW() == null && plus == null ? 0 : leastV);
    }

    /**
     * Whether it switches itself off at some voltage in a given vehicle. A constant current sets in by itself above its
     * minimum; with it only a maximum counts.
     */
    public boolean switches(VehicleSystem system) {
        return draw.maximumV() != null || (draw.currentA() == null && minimumV(system) > 0);
    }

    /** The conductance it keeps while it is off, a millionth of its own at its minimum volts, S. */
    public double idleConductanceS(VehicleSystem system) {
        double leastV = minimumV(system);
        double atV = leastV > 0 ? leastV : system.nominalVoltageV();
        double ownS = 0;
        if (draw.resistanceOhm() != null) {
            ownS = 1 / draw.resistanceOhm();
        } else if (draw.powerW() != null) {
            ownS = draw.powerW() / (atV * atV);
        } else if (draw.currentA() != null) {
            ownS = draw.currentA() / atV;
        }
        return IDLE_SHARE * ownS;
    }

    /**
     * What it takes, and between which volts.
     *
     * @param resistanceOhm constant resistance
     * @param currentA constant current, reached just above {@code minimumV}
     * @param powerW constant power
     * @param minimumV below this it takes nothing; 0 unless said, for constant watts, or a polarised one, half the nominal voltage, or half of
     *     {@code maximumV} if that is no more
     * @param maximumV above this it takes nothing; absent for no such limit
     */
    public record LoadDraw(
            @Nullable Double resistanceOhm,
            @Nullable Double currentA,
            @Nullable Double powerW,
            @Nullable Double minimumV,
            @Nullable Double maximumV) {}
}

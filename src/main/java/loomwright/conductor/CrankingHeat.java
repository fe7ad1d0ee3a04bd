package loomwright.conductor;

import loomwright.answer.Basis;

/**
 * Whether a wire bears the current of the starter: cranking lasts seconds, so it is not held to a continuous current but to
 * the heat of one go, none of it lost.
 */
public final class CrankingHeat {
    /** One cranking period at most, then a pause to cool: common practice, no source. */
    public static final double GO_S = 30;

    public static final Basis ADIABATIC = Basis.fromMemory("adiabatic heating, K = 226, beta = 234.5 C", "IEC 60949");

    static final Basis GO = Basis.commonPractice("one cranking period takes at most 30 s, then a pause to cool");

    private CrankingHeat() {}

    /**
     * Time to the limit of the insulation, from the temperature of the place: {@link AdiabaticLimit#timeS}.
     *
     * @param currentA above 0
     */
    public static double timeS(ConductorSize size, double currentA, double ambientC, double insulationC) {
        return AdiabaticLimit.timeS(size.areaMm2(), currentA, ambientC, insulationC);
    }

    /** Whether a time from {@link #timeS} is long enough for one go. */
    public static boolean bears(double timeS) {
        return timeS >= GO_S;
    }
}

package loomwright.backfeed;

import java.util.List;
import java.util.Locale;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Consumer;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.operation.FeedStrength;

/** How serious an unintended feed is, and how to say it. */
public final class Verdicts {
    private Verdicts() {}

    /**
     * A starter, an ignition, a relay or a load at work unasked is a danger, a lamp that is lit a warning; what could stay
     * in but cannot pull in is a warning; a trickle a note (common practice, no source).
     */
    public static Severity severity(Consumer consumer, FeedStrength activity, boolean operated) {
        if (activity == FeedStrength.OPERATES || (operated && activity == FeedStrength.HOLDS)) {
            return consumer instanceof FilamentLamp || consumer instanceof LedLamp ? Severity.WARNING : Severity.DANGER;
        }
        return activity == FeedStrength.LEAKS ? Severity.NOTE : Severity.WARNING;
    }

    /**
     * The worst occurrence of a load in a sentence.
     *
     * @param wasIn whether its armature was pulled in already when the step began
     */
    public static String verdict(Consumer consumer, Occurrence worst, boolean wasIn) {
        String when = consumer.displayName() + ", " + worst.description() + at(worst) + ": ";
        String volts = volts(consumer, worst);
        return when
                + switch (worst.activity()) {
                    case OPERATES ->
                        wasIn && hasArmature(consumer)
                                ? "stays in" + bothLimits(volts, worst)
                                : operates(consumer)
                                        + String.format(Locale.ROOT, " (%s; it needs %.2f V)", volts, worst.operateV());
                    case HOLDS ->
                        (worst.operated()
                                        ? "is held in"
                                        : "does not pull in, but stays in once something has pulled it in")
                                + bothLimits(volts, worst);
                    case GLOWS -> "glows (" + volts + ")";
                    case LEAKS -> "carries a trickle, too little to work (" + volts + ")";
                    case DEAD -> throw new IllegalStateException("a dead load is no occurrence");
                };
    }

    /** What is asked of a load that is live by its own way at a time that the plan does not list. */
    public static String question(Consumer consumer, Occurrence occurrence) {
        return consumer.displayName() + " is also live with " + occurrence.description() + at(occurrence)
                + ". It is fed through its own switch. Is that right?";
    }

    /** What comes of a remedy, in sentences. */
    public static String effect(Remedy remedy) {
        String costs = remedy.costAt() == null
                ? "No load loses anything by it."
                : String.format(Locale.ROOT, "It costs %.2f V (%s).", remedy.costV(), remedy.costAt());
        String restores = remedy.restores().isEmpty()
                ? ""
                : String.format(" With it %s again as meant.", works(remedy.restores()));
        return costs
                + restores
                + (remedy.remainingV() == 0
                        ? ""
                        : String.format(Locale.ROOT, " A trickle stays (%.2f V).", remedy.remainingV()));
    }

    private static String works(List<String> loads) {
        return String.join(", ", loads) + (loads.size() == 1 ? " works" : " work");
    }

    /** As a meter shows them; of a solenoid with two windings besides, what they pull like together. */
    private static String volts(Consumer consumer, Occurrence worst) {
        if (consumer instanceof Solenoid solenoid && solenoid.pullInResistanceOhm() != null) {
            return String.format(
                    Locale.ROOT,
                    "%.2f V across its hold-in winding, %.3g A; its two windings together pull like %.2f V across that"
                            + " one alone",
                    worst.currentA() * solenoid.holdInResistanceOhm(),
                    worst.currentA(),
                    worst.effectiveV());
        }
        return String.format(Locale.ROOT, "%.2f V, %.3g A", worst.effectiveV(), worst.currentA());
    }

    /** Of what is in already: to stay in it needs far less than to pull in. */
    private static String bothLimits(String volts, Occurrence worst) {
        return String.format(
                Locale.ROOT,
                " (%s; it pulls in from %.2f V and lets go below %.2f V)",
                volts,
                worst.operateV(),
                worst.releaseV());
    }

    private static boolean hasArmature(Consumer consumer) {
        return consumer instanceof Relay || consumer instanceof Solenoid;
    }

    private static String operates(Consumer consumer) {
        if (hasArmature(consumer)) {
            return "pulls in";
        }
        return consumer instanceof FilamentLamp || consumer instanceof LedLamp ? "is lit" : "works";
    }

    private static String at(Occurrence worst) {
        if (worst.switches().isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder(" (");
        worst.switches().forEach((id, position) -> {
            if (text.length() > 2) {
                text.append(", ");
            }
            text.append(id).append(' ').append(position);
        });
        return text.append(")").toString();
    }
}

package loomwright.judgement.ignition;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.judgement.Level;
import loomwright.judgement.Ratio;
import loomwright.judgement.Verdict;
import loomwright.judgement.ignition.IgnitionMistake.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Coil, ballast and switch judged by ohms, volts and heat, whatever the coil is called. Ohms are those of 12 V; at 6 V
 * half of them, at 24 V 3.3 times.
 *
 * <p>The level is the worse of what the figures say (current of the contacts, heat of the coil) and what the combination
 * says (a coil of few ohms without a limit, a ballast before a coil that needs none).
 */
public final class IgnitionRule {
    /** Contacts carry this for long. */
    public static final double CONTACTS_A = 5.0;
    /** Up to this they live shorter. */
    public static final double CONTACTS_NOTE_A = 6.5;
    /** Up to this they are soon burnt. */
    public static final double CONTACTS_WARNING_A = 8.0;
    /** Heat that a coil can of usual size stands with the key left on. */
    public static final double REST_HEAT_W = 65;
    /** Above this it is a danger. */
    public static final double REST_HEAT_DANGER_W = 80;
    /** Mean heat while running. */
    public static final double RUNNING_HEAT_W = 40;
    /** Above this it is a danger. */
    public static final double RUNNING_HEAT_DANGER_W = 55;
    /** From here a coil should not be left on. */
    public static final double KEY_ON_HEAT_W = 40;
    /** Stored energy above which a contact set's coil is saturated and the figure not real, in J. */
    public static final double SATURATION_J = 0.150;

    public static final Basis CONTACTS_BASIS = Basis.verified(
            "contacts 4 to 5 A; to 6.5 A a note, to 8 A a warning, above a danger",
            "US Army TM 9-8000, chapter 15 (the bands above 5 A are common practice)");
    public static final Basis GIVEN_BASIS =
            Basis.computed("current with the contacts closed against the rating given", "comparison");
    public static final Basis HEAT_BASIS = Basis.commonPractice(
            "coil can of usual size, key left on: to 65 W, warning to 80 W, danger above; mean while running, at idle or at the speed"
                    + " asked about: to 40 W, warning to 55 W");
    public static final Basis COMBINATION_BASIS = Basis.commonPractice(
            "12 V: coil of 1.2 to 1.8 ohm behind 1.2 to 1.8 ohm of ballast, of 2.8 to 3.6 ohm without; of 0.4 to 1.1 ohm only"
                    + " with a module that limits");
    public static final Basis MODULE_BASIS = Basis.commonPractice(
            "module without limit: to 0.8 of its rating, a note to 1.0, a warning to 1.2, above a danger; with a limit: volts"
                    + " over ohms at least 1.15 times it");
    public static final Basis ENERGY_BASIS = Basis.fromMemory(
            "stored energy of contact ignitions 30 to 50 mJ; above 150 mJ the core saturates", "Heywood 9.5");

    private static final double HIGH_ENERGY_MOST_OHM = CoilKind.HIGH_ENERGY_MOST_OHM;
    private static final double BALLAST_COIL_MOST_OHM = CoilKind.BALLAST_COIL_MOST_OHM;
    private static final double DIRECT_COIL_MOST_OHM = 5.5;
    private static final double NO_BALLAST_OHM = 0.2;
    private static final double SMALL_BALLAST_OHM = 0.6;
    private static final double LIMIT_SURE = 1.15;
    private static final double USUAL_LIMIT_A = 6;
    private static final double DIRECT_OHM = 3.0;
    private static final double BALLASTED_OHM = 1.5;
    private static final double[] BALLASTS_OHM = {1.2, 1.5, 1.8};

    private IgnitionRule() {}

    /** What is wrong with a primary circuit, worst first; empty if nothing is. */
    public static List<IgnitionMistake> judge(PrimaryLoop loop) {
        return found(loop).stream()
                .map(f -> new IgnitionMistake(f.kind(), f.level(), f.value(), f.limit(), f.basis(), remedies(loop, f)))
                .sorted((a, b) -> b.level().compareTo(a.level()))
                .toList();
    }

    /**
     * What is wrong with a primary circuit as findings, and that a coil on contacts is not to be left on where that heats it
     * up without harm.
     */
    public static List<Finding> findings(PrimaryLoop loop) {
        Stream<Finding> mistakes = judge(loop).stream().map(mistake -> mistake.finding(loop));
        boolean warmsUp =
                !loop.contact().module() && loop.restHeatW() > KEY_ON_HEAT_W && loop.restHeatW() <= REST_HEAT_W;
        return warmsUp
                ? Stream.concat(mistakes, Stream.of(keyNotToBeLeftOn(loop))).toList()
                : mistakes.toList();
    }

    private static Finding keyNotToBeLeftOn(PrimaryLoop loop) {
        return Finding.note(IgnitionAdvice.KEY_NOT_TO_BE_LEFT_ON.with(arg("coilHeatW", loop.restHeatW())), HEAT_BASIS)
                .remedy(IgnitionAdvice.TURN_KEY_OFF.with());
    }

    /** The worst level of a primary circuit. */
    public static Level level(PrimaryLoop loop) {
        return found(loop).stream().map(Found::level).reduce(Level.FITS, Level::worse);
    }

    private record Found(Kind kind, Level level, double value, double limit, Basis basis) {}

    private static List<Found> found(PrimaryLoop loop) {
        List<Found> found = new ArrayList<>();
        double coilOhm = loop.at12V(loop.coilOhm());
        double ballastOhm = loop.at12V(loop.ballastInOhm());
        boolean limits = loop.contact().limitA() != null;
        Level heat = heat(loop);
        if (loop.bypassed() && loop.ballastOhm() > 0 && !limits) {
            Level level = coilOhm < BALLAST_COIL_MOST_OHM ? Level.DANGER : Level.NOTE;
            // A ballast that would not save the coil either is not worth freeing.
            if (level != Level.DANGER || level(loop.withBallast(loop.ballastOhm())) != Level.DANGER) {
                found.add(new Found(Kind.BYPASS_LEFT_ON, level, loop.runningA(), CONTACTS_A, COMBINATION_BASIS));
                return found;
            }
        }
        if (coilOhm < HIGH_ENERGY_MOST_OHM && !limits && ballastOhm < SMALL_BALLAST_OHM && !rated(loop)) {
            found.add(new Found(
                    Kind.NO_CURRENT_LIMIT,
                    Level.DANGER,
                    loop.runningA(),
                    loop.contact().module() ? CONTACTS_WARNING_A : CONTACTS_A,
                    COMBINATION_BASIS));
            return found;
        }
        Level figures = heat.worse(contacts(loop));
        boolean small = ballastOhm >= NO_BALLAST_OHM && ballastOhm < SMALL_BALLAST_OHM;
        if (small && figures != Level.FITS && !limits && coilOhm < BALLAST_COIL_MOST_OHM) {
            found.add(new Found(
                    Kind.BALLAST_TOO_SMALL,
                    figures,
                    loop.ballastInOhm(),
                    loop.from12V(BALLASTS_OHM[0]),
                    COMBINATION_BASIS));
            return found;
        }
        if (heat != Level.FITS && !(loop.contact().module() && limits)) {
            found.add(new Found(Kind.COIL_OVERHEATS, heat, heatW(loop), heatLimitW(loop), HEAT_BASIS));
        }
        Level contacts = contacts(loop);
        if (contacts != Level.FITS) {
            Verdict judged = judgeContacts(loop.runningA(), loop.contact().switchRatingA());
            found.add(new Found(Kind.CONTACT_OVERLOADED, contacts, judged.value(), judged.limit(), judged.basis()));
        }
        found.addAll(module(loop));
        tooLarge(loop).ifPresent(found::add);
        boolean weak = (coilOhm >= BALLAST_COIL_MOST_OHM && ballastOhm >= SMALL_BALLAST_OHM)
                || coilOhm >= DIRECT_COIL_MOST_OHM;
        if (weak && !limits) {
            found.add(new Found(
                    Kind.COIL_WEAK,
                    Level.WARNING,
                    loop.runningA(),
                    loop.unlimitedA(loop.runningV()) * loop.totalOhm() / (loop.feedOhm() + loop.from12V(DIRECT_OHM)),
                    COMBINATION_BASIS));
        }
        return found;
    }

    /** A ballast of more than the usual ohms that leaves a coil made for one less than its window. */
    private static Optional<Found> tooLarge(PrimaryLoop loop) {
        double ballastOhm = loop.ballastInOhm();
        if (loop.contact().limitA() != null || ballastOhm == 0 || loop.coilKind() != CoilKind.WITH_BALLAST) {
            return Optional.empty();
        }
        double lowV = CoilWindow.of(
                        loop.coilOhm(),
                        loop.nominalV(),
                        loop.restV(),
                        loop.contact().dropV(),
                        null)
                .lowV();
        Level level = Ratio.of(lowV, loop.restA() * loop.coilOhm()).level();
        double mostOhm = loop.from12V(BALLASTS_OHM[BALLASTS_OHM.length - 1]);
        return level == Level.FITS || ballastOhm <= mostOhm
                ? Optional.empty()
                : Optional.of(new Found(Kind.BALLAST_TOO_LARGE, level, ballastOhm, mostOhm, CoilWindow.BASIS));
    }

    private static boolean rated(PrimaryLoop loop) {
        return loop.contact().module() && loop.contact().switchRatingA() != null;
    }

    private static Level contacts(PrimaryLoop loop) {
        return loop.contact().module()
                ? Level.FITS
                : judgeContacts(loop.runningA(), loop.contact().switchRatingA()).level();
    }

    /**
     * Contact points against the current that they carry while the engine runs.
     *
     * @param currentA 0 or more
     * @param ratingA what they may carry; absent for the usual
     */
    public static Verdict judgeContacts(double currentA, @Nullable Double ratingA) {
        double limitA = ratingA == null ? CONTACTS_A : ratingA;
        double usualA = currentA * CONTACTS_A / limitA;
        Level level = usualA <= CONTACTS_A
                ? Level.FITS
                : usualA <= CONTACTS_NOTE_A ? Level.NOTE : usualA <= CONTACTS_WARNING_A ? Level.WARNING : Level.DANGER;
        return new Verdict(
                "contacts",
                level,
                Ratio.of(currentA, limitA).borderline(),
                currentA,
                limitA,
                ratingA == null ? CONTACTS_BASIS : GIVEN_BASIS);
    }

    /**
     * Contacts stand closed with the key left on, or work while the engine runs; the worse of both counts. A module switches
     * off when the engine stops, so its coil is judged by its mean heat alone.
     */
    private static Level heat(PrimaryLoop loop) {
        Level rest = loop.contact().module() ? Level.FITS : band(loop.restHeatW(), REST_HEAT_W, REST_HEAT_DANGER_W);
        return rest.worse(band(loop.meanHeatW(), RUNNING_HEAT_W, RUNNING_HEAT_DANGER_W));
    }

    private static Level band(double value, double fits, double danger) {
        return value <= fits
                ? Level.FITS
                : value <= (1 + Ratio.BAND) * fits ? Level.NOTE : value <= danger ? Level.WARNING : Level.DANGER;
    }

    private static double heatW(PrimaryLoop loop) {
        return restDecides(loop) ? loop.restHeatW() : loop.meanHeatW();
    }

    private static double heatLimitW(PrimaryLoop loop) {
        return restDecides(loop) ? REST_HEAT_W : RUNNING_HEAT_W;
    }

    /** Whether its heat with the key left on is more of its limit than its mean heat while running. */
    static boolean restDecides(PrimaryLoop loop) {
        return !loop.contact().module() && loop.restHeatW() / REST_HEAT_W >= loop.meanHeatW() / RUNNING_HEAT_W;
    }

    private static List<Found> module(PrimaryLoop loop) {
        return loop.contact().module()
                ? Stream.of(limitReached(loop), moduleRating(loop))
                        .flatMap(Optional::stream)
                        .toList()
                : List.of();
    }

    private static Optional<Found> limitReached(PrimaryLoop loop) {
        Double limitA = loop.contact().limitA();
        if (limitA == null) {
            return Optional.empty();
        }
        double reach = loop.unlimitedA(loop.runningV()) / limitA;
        if (reach >= LIMIT_SURE) {
            return Optional.empty();
        }
        boolean plain = loop.at12V(loop.coilOhm()) >= BALLAST_COIL_MOST_OHM && loop.ballastInOhm() == 0;
        return Optional.of(new Found(
                plain ? Kind.COIL_OF_LITTLE_USE : Kind.LIMIT_NOT_REACHED,
                plain || reach >= 1 ? Level.NOTE : Level.WARNING,
                loop.unlimitedA(loop.runningV()),
                limitA,
                MODULE_BASIS));
    }

    private static Optional<Found> moduleRating(PrimaryLoop loop) {
        Double ratingA = loop.contact().switchRatingA();
        if (ratingA == null) {
            return Optional.empty();
        }
        double share = loop.runningA() / ratingA;
        Level level = share <= 0.8 ? Level.FITS : share <= 1 ? Level.NOTE : share <= 1.2 ? Level.WARNING : Level.DANGER;
        return level == Level.FITS
                ? Optional.empty()
                : Optional.of(new Found(Kind.MODULE_OVERLOADED, level, loop.runningA(), ratingA, MODULE_BASIS));
    }

    /** Every remedy is judged; one that leaves anything as serious, or worse, is no remedy. */
    private static List<IgnitionRemedy> remedies(PrimaryLoop loop, Found found) {
        return candidates(loop, found.kind())
                .filter(remedy -> isChange(loop, remedy))
                .filter(remedy -> level(remedy.cured()).compareTo(found.level()) < 0)
                .toList();
    }

    /** Not a coil of the ohms that is there already. */
    private static boolean isChange(PrimaryLoop loop, IgnitionRemedy remedy) {
        return remedy.kind() != IgnitionRemedy.Kind.FIT_COIL
                || Math.abs(remedy.ohm() - loop.coilOhm()) > Ratio.BAND * loop.coilOhm();
    }

    private static Stream<IgnitionRemedy> candidates(PrimaryLoop loop, Kind kind) {
        IgnitionRemedy module =
                new IgnitionRemedy(IgnitionRemedy.Kind.FIT_LIMITING_MODULE, 0, loop.withModule(USUAL_LIMIT_A));
        IgnitionRemedy directCoil = new IgnitionRemedy(
                IgnitionRemedy.Kind.FIT_COIL, loop.from12V(DIRECT_OHM), loop.withCoil(loop.from12V(DIRECT_OHM)));
        double ballastedOhm = loop.from12V(BALLASTED_OHM);
        IgnitionRemedy ballastedCoil = new IgnitionRemedy(
                IgnitionRemedy.Kind.FIT_COIL_AND_BALLAST,
                ballastedOhm,
                loop.withCoilAndBallast(ballastedOhm, ballastedOhm));
        IgnitionRemedy noBallast = new IgnitionRemedy(IgnitionRemedy.Kind.REMOVE_BALLAST, 0, loop.withBallast(0));
        return switch (kind) {
            case BYPASS_LEFT_ON ->
                Stream.of(
                        new IgnitionRemedy(IgnitionRemedy.Kind.FREE_BYPASS, 0, loop.withBallast(loop.ballastOhm())),
                        new IgnitionRemedy(IgnitionRemedy.Kind.REMOVE_BALLAST, 0, loop.withBallast(0)));
            case NO_CURRENT_LIMIT -> Stream.of(module, directCoil, ballastedCoil);
            case COIL_OVERHEATS, BALLAST_TOO_SMALL, BALLAST_TOO_LARGE, CONTACT_OVERLOADED ->
                Stream.concat(ballast(loop).stream(), Stream.of(directCoil));
            case COIL_WEAK -> Stream.of(noBallast, directCoil);
            case LIMIT_NOT_REACHED -> Stream.of(noBallast);
            case MODULE_OVERLOADED -> Stream.concat(Stream.of(module), ballast(loop).stream());
            case COIL_OF_LITTLE_USE -> Stream.empty();
        };
    }

    /** The usual ballast with which least is found, the smallest of them. */
    private static Optional<IgnitionRemedy> ballast(PrimaryLoop loop) {
        IgnitionRemedy best = null;
        for (double ohm12V : BALLASTS_OHM) {
            double ohm = loop.from12V(ohm12V);
            IgnitionRemedy next = new IgnitionRemedy(IgnitionRemedy.Kind.FIT_BALLAST, ohm, loop.withBallast(ohm));
            if (best == null || level(next.cured()).compareTo(level(best.cured())) < 0) {
                best = next;
            }
        }
        return Optional.ofNullable(best);
    }
}

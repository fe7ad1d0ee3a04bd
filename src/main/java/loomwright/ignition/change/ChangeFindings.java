package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.Ampacity;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.FusibleLink;
import loomwright.ignition.Figure;
import loomwright.ignition.change.ChangeInput.BypassFrom;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;

/** What stands against a change, each with its numbers and what to do. */
final class ChangeFindings {
    private static final double CONTACTS_A = 5;
    private static final double INSULATION_C = 105;
    private static final double AMBIENT_C = 50;

    /** 13 A at 10 V: Army manual TM 5-2420-230-24-2, hold-in winding of a 12 V solenoid. */
    private static final double SOLENOID_OHM = 0.77;

    /** Less than this is no coil of more energy. */
    private static final double MORE_ENERGY = 1.1;

    private static final double RESERVE = 1.5;

    /** Said here with both sides' numbers, so not taken over from the spark. */
    private static final Set<String> SAID_HERE = Set.of("contacts-overloaded", "coil-overheats", "coil-weak");

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final @Nullable ConductorSize wire;
    private final @Nullable ConductorSize link;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> working = new ArrayList<>();

    ChangeFindings(
            ChangeInput input,
            SparkResult before,
            SparkResult after,
            @Nullable ConductorSize wire,
            @Nullable ConductorSize link) {
        this.input = input;
        this.before = before;
        this.after = after;
        this.wire = wire;
        this.link = link;
        coil();
        switched();
        ballast();
        wire();
        fuse();
        fusibleLink();
        bypass();
        gap();
        after.findings().stream()
                .filter(finding -> finding.severity() != Severity.NOTE && !SAID_HERE.contains(finding.code()))
                .forEach(findings::add);
        findings.sort(Comparator.comparing(Finding::severity));
    }

    List<Finding> list() {
        return findings;
    }

    List<String> working() {
        return working;
    }

    private void coil() {
        double was = before.closed().coilHeatW();
        double is = after.closed().coilHeatW();
        String heat = IgnitionChange.beforeAndAfter(was, is, "W")
                + " in the coil with the key on and contacts closed, "
                + IgnitionChange.beforeAndAfter(
                        before.at().coilHeatW(), after.at().coilHeatW(), "W")
                + " while running";
        List<Finding.Figure> figures =
                List.of(figure("beforeClosedCoilHeatW", was), figure("afterClosedCoilHeatW", is));
        if (after.findings().stream().anyMatch(finding -> finding.code().equals("coil-overheats"))) {
            add(
                    Severity.DANGER,
                    "coil-overheats",
                    List.of("coil"),
                    "A coil meant for use with a ballast is fed directly: " + heat + ". It overheats and may burst.",
                    figures,
                    Basis.commonPractice("coil for use with a ballast 1.2 to 1.8 ohm, for direct feed 2.8 to 3.6 ohm"),
                    "Leave the ballast in its feed, or fit a coil meant for direct feed.");
        }
        if (after.findings().stream().anyMatch(finding -> finding.code().equals("coil-weak"))) {
            add(
                    Severity.WARNING,
                    "coil-weak",
                    List.of("coil", "ballast"),
                    "A coil meant for direct feed gets its current through a ballast: "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().availableV() / 1e3, after.at().availableV() / 1e3, "kV available")
                            + ", margin " + Figure.of(after.at().marginRatio()) + ".",
                    List.of(
                            figure("beforeAvailableKv", before.at().availableV() / 1e3),
                            figure("afterAvailableKv", after.at().availableV() / 1e3)),
                    Basis.commonPractice("coil for use with a ballast 1.2 to 1.8 ohm, for direct feed 2.8 to 3.6 ohm"),
                    "Take the ballast out of the feed together with the bypass, or fit a coil meant for a ballast.");
        }
    }

    private void switched() {
        boolean module = input.after().primarySwitch().kind() == SwitchInput.Kind.MODULE;
        double peakA = Math.max(after.at().breakA(), module ? 0 : after.closed().currentA());
        String currents =
                IgnitionChange.beforeAndAfter(before.at().breakA(), after.at().breakA(), "A") + " at break";
        Double moduleA = input.moduleA();
        if (module && moduleA != null && after.at().breakA() > moduleA) {
            add(
                    Severity.DANGER,
                    "module-overloaded",
                    List.of("module"),
                    "Current at the break: " + currents + "; the module is rated " + Figure.of(moduleA) + " A.",
                    List.of(figure("breakA", after.at().breakA()), figure("ratingA", moduleA)),
                    Basis.computed("current at break against the rating given", "comparison"),
                    "A coil of more ohms, a ballast, or a module rated for this coil.");
        }
        Double rated = input.contactsA();
        double contactsA = rated == null ? CONTACTS_A : rated;
        if (!module && peakA > contactsA) {
            add(
                    Severity.WARNING,
                    "contacts-overloaded",
                    List.of("breaker"),
                    "Current at the break: " + currents + "; the contacts carry "
                            + Figure.of(after.closed().currentA()) + " A with the engine stopped, and stand about "
                            + Figure.of(contactsA) + " A and will burn.",
                    List.of(figure("breakA", after.at().breakA()), figure("ratingA", contactsA)),
                    Basis.verified(
                            "contacts of a plain system switch about 4 to 5 A",
                            "Army manual TM 9-8000, chapter 15 (ignition)"),
                    "More ballast, a coil of more ohms, or a module in the place of the contacts.");
        }
    }

    private void ballast() {
        Double ratingW = input.ballastW();
        double closedW = after.closed().ballastHeatW();
        if (ratingW != null && Math.max(closedW, after.at().ballastHeatW()) > ratingW) {
            add(
                    after.at().ballastHeatW() > ratingW ? Severity.DANGER : Severity.WARNING,
                    "ballast-overloaded",
                    List.of("ballast"),
                    "The ballast turns " + Figure.of(after.at().ballastHeatW()) + " W into heat while running and "
                            + Figure.of(closedW) + " W with the key on and contacts closed (before: "
                            + Figure.of(before.closed().ballastHeatW()) + " W); it is rated " + Figure.of(ratingW)
                            + " W.",
                    List.of(figure("ballastHeatW", closedW), figure("ratingW", ratingW)),
                    Basis.computed("heat I^2 R against the rating given", "Joule's law"),
                    "A ballast of the same ohms for more watts, mounted on metal clear of wiring.");
        }
    }

    /** The largest current that lasts: running, or key on with the primary closed, which a module switches off itself. */
    private double lastingA() {
        boolean module = input.after().primarySwitch().kind() == SwitchInput.Kind.MODULE;
        return Math.max(after.at().allCoilsA(), module ? 0 : after.closed().currentA());
    }

    private void wire() {
        ConductorSize size = wire;
        if (size == null) {
            return;
        }
        Optional<Ampacity> allowed = allowed(size);
        double currentA = lastingA();
        allowed.ifPresent(ampacity -> working.add("Wire " + size.name() + ": table "
                + Figure.of(ampacity.tableA()) + " A, with its corrections " + Figure.of(ampacity.allowedA())
                + " A; lasting current " + Figure.of(currentA) + " A"));
        if (allowed.isEmpty()) {
            add(
                    Severity.NOTE,
                    "wire-not-in-tables",
                    List.of("feed"),
                    "No table of continuous current lists " + size.name() + " with this insulation.",
                    List.of(figure("currentA", currentA)),
                    Basis.computed("tables looked up", "33 CFR 183.425 Table 5, AC 43.13-1B table 11-9"),
                    null);
        } else if (allowed.get().allowedA() < currentA) {
            add(
                    Severity.DANGER,
                    "wire-overloaded",
                    List.of("feed"),
                    "The feed wire carries " + Figure.of(currentA) + " A for long (before: "
                            + Figure.of(before.at().allCoilsA()) + " A running); " + size.name() + " may carry "
                            + Figure.of(allowed.get().allowedA()) + " A here.",
                    List.of(
                            figure("currentA", currentA),
                            figure("allowedA", allowed.get().allowedA())),
                    allowed.get().basis().get(0),
                    "A thicker feed wire, or a relay near the coil with a wire of its own.");
        }
    }

    private Optional<Ampacity> allowed(ConductorSize size) {
        Double insulation = input.wireInsulationC();
        Double ambient = input.ambientC();
        double ambientC = ambient == null ? AMBIENT_C : ambient;
        Ampacity.Conditions conditions =
                Ampacity.Conditions.of(insulation == null ? INSULATION_C : insulation, ambientC);
        return Stream.of(AmpacityTable.values())
                .flatMap(table -> Ampacity.find(size, table, conditions).stream())
                .findFirst();
    }

    private void fuse() {
        Double fuseA = input.fuseA();
        double currentA = lastingA();
        if (fuseA != null && currentA > FuseChoice.LOAD_SHARE * fuseA) {
            add(
                    Severity.WARNING,
                    "fuse-too-small",
                    List.of("fuse"),
                    "The fuse of " + Figure.of(fuseA) + " A carries " + Figure.of(currentA) + " A for long (before: "
                            + Figure.of(before.at().allCoilsA())
                            + " A running); 75 % of its rating is the most it should carry, peaks at break are "
                            + Figure.of(after.at().breakA()) + " A.",
                    List.of(figure("currentA", currentA), figure("ratingA", fuseA)),
                    Basis.commonPractice("continuous load at most 75 % of the rating"),
                    "A fuse of at least " + Figure.of(currentA / FuseChoice.LOAD_SHARE)
                            + " A, if the wire behind it carries that.");
        }
    }

    private void fusibleLink() {
        ConductorSize size = link;
        if (size == null) {
            return;
        }
        double currentA = lastingA();
        Optional<Ampacity> allowed = allowed(size);
        if (allowed.isPresent() && allowed.get().allowedA() < currentA) {
            add(
                    Severity.WARNING,
                    "fusible-link-overloaded",
                    List.of("fusible-link"),
                    "The fusible link of " + size.name() + " carries " + Figure.of(currentA)
                            + " A for long; as a wire it may carry "
                            + Figure.of(allowed.get().allowedA()) + " A.",
                    List.of(
                            figure("currentA", currentA),
                            figure("allowedA", allowed.get().allowedA())),
                    allowed.get().basis().get(0),
                    "A thicker feed wire with the link that belongs to it.");
        }
        ConductorSize behind = wire;
        if (behind != null && size.areaMm2() > linkAreaMm2(behind) * 1.01) {
            add(
                    Severity.WARNING,
                    "fusible-link-too-thick",
                    List.of("fusible-link", "feed"),
                    "The fusible link of " + size.name() + " does not protect a feed wire of " + behind.name()
                            + ": it should be four gauge numbers thinner.",
                    List.of(figure("linkAreaMm2", size.areaMm2()), figure("wireAreaMm2", behind.areaMm2())),
                    Basis.commonPractice("fusible link four gauge numbers smaller than the wire it protects"),
                    FusibleLink.find(behind, 20)
                            .map(l -> "A link of " + l.size() + ".")
                            .orElse("A fuse: the tables have no wire so thin."));
        }
    }

    /** Area of the link that belongs to a wire, 0 where the tables have none. */
    private static double linkAreaMm2(ConductorSize wire) {
        return FusibleLink.find(wire, 20)
                .map(link -> wire.areaMm2() * link.areaRatio())
                .orElse(0.0);
    }

    private void bypass() {
        if (!Boolean.TRUE.equals(input.bypassLeft())) {
            return;
        }
        double ballastOhm = ballastOhm(input.after());
        if (ballastOhm == 0) {
            add(
                    Severity.WARNING,
                    "bypass-without-ballast",
                    List.of("bypass"),
                    "The ballast is gone and the bypass is still there: it bypasses nothing, and joins two feeds at the"
                            + " coil.",
                    List.of(figure("ballastResistanceOhm", 0)),
                    Basis.commonPractice("a bypass serves a ballast; without one it goes"),
                    "Take the bypass off at both ends and insulate what stays.");
        }
        BypassFrom given = input.bypassFrom();
        if (given != null && given != BypassFrom.START_WIRE) {
            add(
                    ballastOhm == 0 ? Severity.WARNING : Severity.NOTE,
                    "bypass-joins-feeds",
                    List.of("bypass"),
                    ballastOhm == 0
                            ? "While cranking the bypass joins its contact to the ignition feed with nothing between:"
                                    + " everything at the key's ignition terminal is fed through the thin bypass wire too,"
                                    + " and stays alive while the starter turns, even with the key's contact open."
                            : "While cranking the bypass feeds back through the ballast of " + Figure.of(ballastOhm)
                                    + " ohm into the ignition feed: small as long as the ballast is there.",
                    List.of(figure("ballastResistanceOhm", ballastOhm)),
                    Basis.commonPractice("two feeds joined at one terminal feed each other"),
                    ballastOhm == 0 ? "Take the bypass off at both ends, or put a diode into it." : null);
            return;
        }
        startWire(ballastOhm);
    }

    private void startWire(double ballastOhm) {
        Double given = input.solenoidOhm();
        double solenoidOhm = given == null ? SOLENOID_OHM : given;
        BypassLeft was = left(input.before(), before, solenoidOhm);
        BypassLeft is = left(input.after(), after, solenoidOhm);
        working.add("Bypass at the start wire, key on: solved as a plan, the solenoid of " + Figure.of(solenoidOhm)
                + " ohm has " + IgnitionChange.beforeAndAfter(was.solenoidV(), is.solenoidV(), "V"));
        String volts = Figure.of(is.solenoidV()) + " V at the solenoid with the key on (before: "
                + Figure.of(was.solenoidV()) + " V), " + Figure.of(is.wireA()) + " A through the bypass wire";
        List<Finding.Figure> figures = List.of(
                figure("solenoidV", is.solenoidV()),
                figure("beforeSolenoidV", was.solenoidV()),
                figure("bypassA", is.wireA()));
        Basis basis = Basis.commonPractice("a solenoid pulls in from 7 to 8 V and holds down to 3 to 5 V at 12 V");
        if (is.pullsIn()) {
            add(
                    Severity.DANGER,
                    "bypass-starts-engine",
                    List.of("bypass", "solenoid"),
                    "The bypass joins the ignition feed to the start wire: " + volts
                            + ". The starter turns as soon as the key is on, and does not stop.",
                    figures,
                    basis,
                    "Take the bypass off at both ends. If it has to stay, feed it from a contact of its own or put a"
                            + " diode into it.");
        } else if (is.holds()) {
            add(
                    Severity.DANGER,
                    "bypass-holds-starter",
                    List.of("bypass", "solenoid"),
                    "The bypass feeds back into the start wire: " + volts
                            + ". Once pulled in, the starter is held after the key is let go.",
                    figures,
                    basis,
                    "Feed the bypass from a contact of its own, or put a diode into it.");
        } else {
            add(
                    Severity.NOTE,
                    "bypass-feeds-back",
                    List.of("bypass", "solenoid"),
                    "The bypass feeds back into the start wire: " + volts + ", too little to hold the starter"
                            + (ballastOhm > 0 ? " as long as the ballast is there" : "") + ".",
                    figures,
                    basis,
                    null);
        }
        if (ballastOhm == 0 || is.holds()) {
            return;
        }
        working.add("The ballast of " + Figure.of(ballastOhm) + " ohm is what keeps the solenoid out.");
    }

    private static BypassLeft left(SparkInput side, SparkResult result, double solenoidOhm) {
        Double feedOhm = side.feed().feedResistanceOhm();
        double currentA = result.closed().currentA();
        double coilOhm = currentA > 0 ? result.closed().coilV() / currentA : 1;
        return BypassLeft.of(
                result.at().supplyV(), feedOhm == null ? 0.05 : feedOhm, ballastOhm(side), coilOhm, solenoidOhm);
    }

    private static double ballastOhm(SparkInput side) {
        Double ohm = side.feed().ballastResistanceOhm();
        return ohm == null ? 0 : ohm;
    }

    private void gap() {
        double was = before.demand().plug().gap().gapMm();
        double is = after.demand().plug().gap().gapMm();
        boolean wide =
                after.findings().stream().anyMatch(finding -> finding.code().equals("gap-needs-other-coil"));
        boolean noMoreEnergy = after.at().energyJ() <= MORE_ENERGY * before.at().energyJ();
        double reserve = input.after().search().reserveRatio() == null
                ? RESERVE
                : input.after().search().reserveRatio();
        if (is > was && (after.at().marginRatio() < reserve || (wide && noMoreEnergy))) {
            add(
                    Severity.WARNING,
                    "gap-without-energy",
                    List.of("plug", "coil"),
                    "The gap goes from " + Figure.of(was) + " to " + Figure.of(is) + " mm, which asks for "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().requiredV() / 1e3, after.at().requiredV() / 1e3, "kV")
                            + ", without the energy for it: "
                            + IgnitionChange.beforeAndAfter(
                                    before.at().energyJ() * 1e3, after.at().energyJ() * 1e3, "mJ")
                            + ", margin " + Figure.of(before.at().marginRatio()) + " before, "
                            + Figure.of(after.at().marginRatio()) + " after.",
                    List.of(
                            figure("gapMm", is),
                            figure("requiredKv", after.at().requiredV() / 1e3),
                            figure("availableKv", after.at().availableV() / 1e3)),
                    Basis.commonPractice("a gap of 1.1 to 1.2 mm needs a coil and module made for it"),
                    "Keep the gap of " + Figure.of(was) + " mm, or fit a coil and module made for the wide one.");
        }
    }

    private static Finding.Figure figure(String name, double value) {
        return new Finding.Figure(name, value);
    }

    private void add(
            Severity severity,
            String code,
            List<String> ids,
            String text,
            List<Finding.Figure> figures,
            Basis basis,
            @Nullable String remedy) {
        findings.add(new Finding(severity, code, ids, text, figures, basis, remedy));
    }
}

package loomwright.sizing;

import java.util.List;
import java.util.stream.Stream;
import loomwright.conductor.ConductorSize;

/**
 * The drop of a run as it grows longer, for one size and its neighbours of the same standard: for a plot.
 *
 * @param currentA current of the load
 * @param lengthM the run asked about, one way
 * @param limit permitted drop
 * @param lines the thinnest wire first
 */
public record DropOverLength(double currentA, double lengthM, DropLimit limit, List<Line> lines) {
    /** How many sizes to either side of the one asked about. */
    private static final int NEIGHBOURS = 2;

    public DropOverLength {
        lines = List.copyOf(lines);
    }

    /**
     * V = fixed + per metre x length: everything but the wires that grow along is the same at every length.
     *
     * @param asked whether it is the size asked about, or chosen
     * @param fixedV joints, chassis, and a return wire whose own length was given
     */
    public record Line(String size, boolean asked, double fixedV, double perMetreV) {
        public double dropV(double lengthM) {
            return fixedV + perMetreV * lengthM;
        }
    }

    /**
     * Around a given size.
     *
     * @param input as for {@link VoltageDrop#calculate}
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static DropOverLength of(VoltageDrop.Input input) {
        DropCase run = DropCase.of(input);
        ConductorSize size = run.out().size();
        Stream<Line> lines = around(size).stream()
                .map(other -> other.name().equals(size.name()) ? line(run, true) : line(run.withSize(other), false));
        return new DropOverLength(run.currentA(), run.out().lengthM(), run.limit(), lines.toList());
    }

    /**
     * Around the size that suits, or the thickest where none does.
     *
     * @param input as for {@link ConductorSizing#size}
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static DropOverLength of(ConductorSizing.Input input) {
        SizingCase job = SizingCase.of(input);
        String chosen = job.solve().sizes().size();
        List<ConductorSize> sizes = job.candidates();
        ConductorSize centre = chosen == null ? sizes.get(sizes.size() - 1) : ConductorSize.parse(chosen);
        double wires = job.lengths().wireM() / job.lengths().lengthM();
        return new DropOverLength(
                job.currentA(),
                job.lengths().lengthM(),
                job.limit(),
                around(centre).stream()
                        .map(size -> new Line(
                                size.name(),
                                size.name().equals(chosen),
                                job.currentA() * job.fixed().fixedOhm(),
                                job.currentA() * job.ohmPerM(size) * wires))
                        .toList());
    }

    private static Line line(DropCase run, boolean asked) {
        double fixedOhm = run.fixed().chassisOhm()
                + Stream.concat(run.fixed().jointsOutOhm().stream(), run.fixed().jointsBackOhm().stream())
                        .mapToDouble(Double::doubleValue)
                        .sum();
        double ohmPerM = ohmPerM(run.out());
        if (run.back().isPresent()) {
            DropCase.WireCase back = run.back().get();
            ohmPerM += run.backGrowsAlong() ? ohmPerM(back) : 0;
            fixedOhm += run.backGrowsAlong() ? 0 : ohmPerM(back) * back.lengthM();
        }
        return new Line(run.out().size().name(), asked, run.currentA() * fixedOhm, run.currentA() * ohmPerM);
    }

    private static double ohmPerM(DropCase.WireCase wire) {
        return wire.size().wireOhmPerM(wire.temperatureC());
    }

    private static List<ConductorSize> around(ConductorSize centre) {
        List<ConductorSize> sold = ConductorSize.listTrade(centre.system());
        List<ConductorSize> thinner =
                sold.stream().filter(s -> s.areaMm2() < centre.areaMm2()).toList();
        return Stream.of(
                        thinner.stream().skip(Math.max(0, thinner.size() - NEIGHBOURS)),
                        Stream.of(centre),
                        sold.stream()
                                .filter(s -> s.areaMm2() > centre.areaMm2())
                                .limit(NEIGHBOURS))
                .flatMap(sizes -> sizes)
                .toList();
    }
}

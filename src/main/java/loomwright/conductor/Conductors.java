package loomwright.conductor;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputErrors;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** What is known of one conductor size. */
public final class Conductors {
    private Conductors() {}

    /**
     * The figures of a size.
     *
     * @param neighbours the sizes next to it in each other system
     * @param ampacities the printed figures of each ampacity table, uncorrected; none where the table has no row for it
     */
    public record Description(
            String name,
            SizeSystem system,
            @JsonUnwrapped CrossSection section,
            @JsonUnwrapped Resistance resistance,
            List<Neighbour> neighbours,
            List<Ampacity> ampacities) {
        public Description {
            neighbours = List.copyOf(neighbours);
            ampacities = List.copyOf(ampacities);
        }
    }

    /**
     * How thick it is.
     *
     * @param circularMils square of the equivalent diameter in thousandths of an inch
     * @param diameterMm of the solid round wire of that area; a stranded conductor is thicker
     */
    public record CrossSection(double areaMm2, double circularMils, double diameterMm) {}

    /**
     * What it resists when it is that warm.
     *
     * @param ohmPerM at {@code temperatureC}
     * @param ohmPer1000Ft at {@code temperatureC}
     * @param tinnedOhmPerM the same of the tinned conductor, where its standard gives it
     */
    public record Resistance(
            double temperatureC,
            double ohmPerM,
            double ohmPer1000Ft,
            @Nullable Double tinnedOhmPerM) {}

    /**
     * The sizes of another system next to a size.
     *
     * @param thinner the thickest size with no more copper; absent below that system's range
     * @param thicker the thinnest size with no less copper; absent above that system's range
     * @param nearest the one of the two whose area differs by the smaller ratio
     */
    public record Neighbour(
            SizeSystem system,
            @Nullable String thinner,
            @Nullable String thicker,
            String nearest) {}

    /**
     * Describes a size at a conductor temperature.
     *
     * <p>R = R20 (1 + 0.00393 (T - 20)).
     *
     * @param size the size
     * @param temperatureC conductor temperature, -60 to 400 C
     * @throws loomwright.answer.RejectedInput OUT_OF_RANGE at /temperatureC
     */
    public static Answer<Description> describe(ConductorSize size, double temperatureC) {
        new InputErrors()
                .range("/temperatureC", temperatureC, Copper.MIN_TEMPERATURE_C, Copper.MAX_TEMPERATURE_C)
                .reject();
        double ohmPerM = size.resistanceOhmPerM(temperatureC);
        List<Ampacity> ampacities = ampacities(size);
        Description description = new Description(
                size.name(),
                size.system(),
                new CrossSection(size.areaMm2(), size.circularMils(), size.diameterMm()),
                new Resistance(
                        temperatureC,
                        ohmPerM,
                        ohmPerM * 1000 * Copper.METRES_PER_FOOT,
                        tinnedOhmPerM(size, temperatureC).orElse(null)),
                neighbours(size),
                ampacities);
        return new Answer<>(
                description, working(size, temperatureC), basis(size, ampacities), List.of(Caution.LOCAL_CODES));
    }

    private static List<Message> working(ConductorSize size, double temperatureC) {
        return List.of(
                ConductorText.AREA.with(
                        arg("size", size.name()),
                        arg("areaMm2", size.areaMm2()),
                        arg("circularMils", Math.round(size.circularMils()))),
                ConductorText.RESISTANCE.with(
                        arg("coldOhmPerM", size.resistanceOhmPerM20C()),
                        arg("warmerRatio", Copper.resistanceRatio(temperatureC)),
                        arg("resistanceOhmPerM", size.resistanceOhmPerM(temperatureC)),
                        arg("temperatureC", temperatureC)),
                ConductorText.STRANDING.with());
    }

    private static List<Basis> basis(ConductorSize size, List<Ampacity> ampacities) {
        List<Basis> basis = new ArrayList<>();
        basis.add(size.basis());
        basis.add(Basis.fromMemory("temperature coefficient of copper 0.00393 per K at 20 C", "IEC 60028"));
        ampacities.stream().flatMap(a -> a.basis().stream()).distinct().forEach(basis::add);
        return basis;
    }

    private static Optional<Double> tinnedOhmPerM(ConductorSize size, double temperatureC) {
        ReferenceTable table = size.system().table();
        if (!table.hasColumn("maxOhmPerKm20CTinned")) {
            return Optional.empty();
        }
        return table.rows().stream()
                .filter(row -> table.getNumber(row, "areaMm2") == size.areaMm2())
                .map(row -> table.getNumber(row, "maxOhmPerKm20CTinned") / 1000 * Copper.resistanceRatio(temperatureC))
                .findFirst();
    }

    private static List<Neighbour> neighbours(ConductorSize size) {
        List<Neighbour> neighbours = new ArrayList<>();
        for (SizeSystem system : SizeSystem.values()) {
            if (system != size.system() && system != SizeSystem.STRANDS) {
                neighbours.add(neighbour(size, system));
            }
        }
        return neighbours;
    }

    private static Neighbour neighbour(ConductorSize size, SizeSystem system) {
        ConductorSize thinner = null;
        ConductorSize thicker = null;
        for (ConductorSize other : ConductorSize.list(system)) {
            if (other.areaMm2() <= size.areaMm2()) {
                thinner = other;
            }
            if (other.areaMm2() >= size.areaMm2() && thicker == null) {
                thicker = other;
            }
        }
        return new Neighbour(
                system,
                thinner == null ? null : thinner.name(),
                thicker == null ? null : thicker.name(),
                nearest(size, system));
    }

    /** Nearest by ratio of areas. */
    private static String nearest(ConductorSize size, SizeSystem system) {
        return ConductorSize.list(system).stream()
                .min(Comparator.comparingDouble(other -> Math.abs(Math.log(other.areaMm2() / size.areaMm2()))))
                .orElseThrow()
                .name();
    }

    private static List<Ampacity> ampacities(ConductorSize size) {
        List<Ampacity> found = new ArrayList<>();
        for (AmpacityTable table : AmpacityTable.values()) {
            for (int classC : table.classesC()) {
                Ampacity.find(size, table, Ampacity.Conditions.of(classC, table.ambientC()))
                        .ifPresent(found::add);
            }
        }
        return found;
    }
}

package loomwright.service.conductor;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.ConductorText;
import loomwright.conductor.Conductors;
import loomwright.conductor.SizeSystem;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/**
 * Which sizes there are.
 *
 * @param system only this one; default all
 * @param temperatureC conductor temperature, −60 to 400 C; default 20
 */
public record ConductorListQuestion(
        @Nullable SizeSystem system, @Nullable Double temperatureC) {

    /** One size in a list; the figures of {@link Conductors.Description} under the same names. */
    public record Entry(
            String name,
            SizeSystem system,
            double areaMm2,
            double circularMils,
            double diameterMm,
            double ohmPerM,
            double ohmPer1000Ft) {}

    /** The sizes, each system from its thinnest to its thickest. */
    public record Listing(double temperatureC, List<Entry> conductors) {
        public Listing {
            conductors = List.copyOf(conductors);
        }
    }

    /**
     * Lists the sizes.
     *
     * @throws loomwright.answer.RejectedInput if the temperature is out of range
     */
    public Answer<Listing> answer() {
        List<Answer<Conductors.Description>> described = new ArrayList<>();
        for (SizeSystem each : system == null ? SizeSystem.values() : new SizeSystem[] {system}) {
            ConductorSize.list(each)
                    .forEach(size -> described.add(new ConductorQuestion(size.name(), temperatureC).answer()));
        }
        Conductors.Description first = described.get(0).result();
        return new Answer<>(
                new Listing(
                        first.resistance().temperatureC(),
                        described.stream().map(one -> entry(one.result())).toList()),
                List.of(ConductorText.RESISTANCE_LAW.with()),
                basis(described),
                described.get(0).cautions());
    }

    private static Entry entry(Conductors.Description size) {
        return new Entry(
                size.name(),
                size.system(),
                size.section().areaMm2(),
                size.section().circularMils(),
                size.section().diameterMm(),
                size.resistance().ohmPerM(),
                size.resistance().ohmPer1000Ft());
    }

    /** The first two of each: where the size comes from, and the temperature coefficient. */
    private static List<Basis> basis(List<Answer<Conductors.Description>> described) {
        return described.stream()
                .flatMap(one -> one.basis().stream().limit(2))
                .distinct()
                .toList();
    }

    /** One row per size. */
    public static Table table(Listing listing) {
        return new Table(
                List.of(
                        "name",
                        "system",
                        "areaMm2",
                        "circularMils",
                        "diameterMm",
                        "temperatureC",
                        "ohmPerM",
                        "ohmPer1000Ft"),
                listing.conductors().stream()
                        .map(size -> List.<@Nullable Object>of(
                                size.name(),
                                size.system(),
                                size.areaMm2(),
                                size.circularMils(),
                                size.diameterMm(),
                                listing.temperatureC(),
                                size.ohmPerM(),
                                size.ohmPer1000Ft()))
                        .toList());
    }
}

package loomwright.service.workshop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import loomwright.service.form.Table;
import loomwright.workshop.CoilChoice;
import loomwright.workshop.CoilPolarity;
import loomwright.workshop.Condenser;
import loomwright.workshop.CrankingTest;
import loomwright.workshop.PointsDwell;
import loomwright.workshop.ResistanceWire;
import loomwright.workshop.SeriesResistor;
import org.jspecify.annotations.Nullable;

/** Each answer of the bench as one table. */
public final class BenchForms {
    private BenchForms() {}

    /** One row. */
    public static Table table(Condenser.Result it) {
        return row(
                List.of("leastUf", "usualLeastUf", "usualMostUf", "condenserUf", "pointsV"),
                it.leastUf(),
                it.usualLeastUf(),
                it.usualMostUf(),
                it.condenserUf(),
                it.pointsV());
    }

    /** One row. */
    public static Table table(PointsDwell.Result it) {
        return row(
                List.of("dwellDegrees", "dwellPercent", "openDegrees", "gapMm", "degreesLessPerTenth", "dwellMs"),
                it.dwellDegrees(),
                it.dwellPercent(),
                it.openDegrees(),
                it.gapMm(),
                it.degreesLessPerTenth(),
                it.dwellMs());
    }

    /** One row. */
    public static Table table(CoilPolarity.Result it) {
        return row(
                List.of("plugPolarity", "right", "moreLeastPercent", "moreMostPercent"),
                it.plugPolarity(),
                it.right(),
                it.moreLeastPercent(),
                it.moreMostPercent());
    }

    /** One row for each kind of coil. */
    public static Table table(CoilChoice.Result it) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (CoilChoice.Kind kind : it.kinds()) {
            rows.add(Arrays.asList(
                    kind.coilKind(),
                    kind.primaryOhm(),
                    kind.level(),
                    String.join(" ", kind.mistakes()),
                    kind.closedA(),
                    kind.restHeatW()));
        }
        return new Table(List.of("coilKind", "primaryOhm", "level", "mistakes", "closedA", "restHeatW"), rows);
    }

    /** One row. */
    public static Table table(CrankingTest.Result it) {
        return row(
                List.of("cause", "leastPostsV", "cablesV", "cablesOhm"),
                it.cause(),
                it.leastPostsV(),
                it.cablesV(),
                it.cablesOhm());
    }

    /** The exact value, then the standard ones. */
    public static Table table(SeriesResistor.Result it) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        rows.add(Arrays.asList("exact", it.resistorOhm(), null, it.currentA(), it.heatW(), it.ratingW()));
        it.standard()
                .forEach(each -> rows.add(Arrays.asList(
                        "standard", each.resistorOhm(), each.loadV(), each.currentA(), each.heatW(), each.ratingW())));
        return new Table(List.of("choice", "resistorOhm", "loadV", "currentA", "heatW", "ratingW"), rows);
    }

    /** One row. */
    public static Table table(ResistanceWire.Result it) {
        return row(
                List.of("lengthM", "ohmPerM", "heatW", "heatWPerM", "surfaceWPerCm2"),
                it.lengthM(),
                it.ohmPerM(),
                it.heatW(),
                it.heatWPerM(),
                it.surfaceWPerCm2());
    }

    private static Table row(List<String> columns, @Nullable Object... cells) {
        return new Table(columns, List.of(Arrays.asList(cells)));
    }
}

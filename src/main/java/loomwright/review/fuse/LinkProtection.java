package loomwright.review.fuse;

import static loomwright.review.context.FindingWording.figure;
import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WireRating;

/** Whether each fusible link is four gauge numbers smaller than the smallest wire behind it. */
public final class LinkProtection implements Check {
    private static final Basis FOUR_SIZES =
            Basis.commonPractice("fusible link: copper, four gauge numbers smaller than the wire");
    private static final double ROUNDING = 1 + 1e-9;

    /** A wire that the link does not protect. */
    private record Failure(Wire wire, ConductorSize size) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Region region : context.protection().fused()) {
            if (region.protector().orElse(null) instanceof FusibleLink link) {
                judge(context, link, region).ifPresent(findings::add);
            }
        }
        return findings;
    }

    private static Optional<Finding> judge(ReviewContext context, FusibleLink link, Region region) {
        ConductorSize size = ConductorSize.parse(link.size());
        List<Failure> failures = new ArrayList<>();
        for (Wire wire : region.wires()) {
            context.findRating(wire)
                    .filter(rating -> size.areaMm2() > largestLinkMm2(rating) * ROUNDING)
                    .ifPresent(rating -> failures.add(new Failure(wire, rating.size())));
        }
        failures.sort(Comparator.comparingDouble(f -> f.size().areaMm2()));
        return failures.isEmpty() ? Optional.empty() : Optional.of(finding(link, size, failures));
    }

    /** 0 if no link is thin enough. */
    private static double largestLinkMm2(WireRating rating) {
        return loomwright.conductor.LinkRating.find(rating.size(), rating.ambientC())
                .map(l -> ConductorSize.parse(l.size()).areaMm2())
                .orElse(0.0);
    }

    private static Finding finding(FusibleLink link, ConductorSize size, List<Failure> failures) {
        ConductorSize smallest = failures.get(0).size();
        List<Failure> weaker = failures.stream()
                .filter(f -> f.size().areaMm2() <= size.areaMm2())
                .toList();
        List<String> ids = new ArrayList<>(List.of(link.id()));
        failures.forEach(f -> ids.add(f.wire().id()));
        List<Failure> stouter =
                failures.stream().filter(f -> !weaker.contains(f)).toList();
        String burns = weaker.isEmpty()
                ? ""
                : " is no smaller than " + named(weaker) + " behind it: in a short these burn before the link melts.";
        String close = stouter.isEmpty() ? "" : " is not four sizes smaller than " + named(stouter) + " behind it.";
        String text = link.displayName() + " (" + link.size() + ", " + number(size.areaMm2()) + " mm2)" + burns
                + (weaker.isEmpty() || stouter.isEmpty() ? close : " It" + close);
        return FindingCode.LINK_TOO_LARGE.finding(
                weaker.isEmpty() ? Severity.WARNING : Severity.DANGER,
                ids,
                text,
                List.of(
                        figure("linkAreaMm2", size.areaMm2()),
                        figure("wireAreaMm2", smallest.areaMm2()),
                        figure(FindingWording.TIMES_LIMIT, size.areaMm2() / smallest.areaMm2())),
                FOUR_SIZES,
                "Give the thin wires fuses of their own where they branch off, close to the feed; to the others a link"
                        + " four sizes smaller, or thicker wire.");
    }

    /** The wires by size: "W1, W2 (1.5 mm2), W3 (4 mm2)". */
    private static String named(List<Failure> failures) {
        Map<String, List<String>> bySize = new LinkedHashMap<>();
        failures.forEach(f -> bySize.computeIfAbsent(f.size().name(), key -> new ArrayList<>())
                .add(f.wire().id()));
        return bySize.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + " (" + e.getKey() + ")")
                .collect(Collectors.joining(", "));
    }
}

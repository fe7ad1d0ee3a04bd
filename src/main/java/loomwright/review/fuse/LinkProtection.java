package loomwright.review.fuse;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.message.Arg;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.Protection.Region;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
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
        return Finding.of(
                        weaker.isEmpty() ? Severity.WARNING : Severity.DANGER,
                        FindingCode.LINK_TOO_LARGE.with(
                                arg("link", link.thing()),
                                arg("linkAreaMm2", size.areaMm2()),
                                arg("wireAreaMm2", smallest.areaMm2()),
                                FindingWording.limitRatio(size.areaMm2(), smallest.areaMm2()),
                                arg("size", link.size()),
                                Arg.messages("burning", named(weaker)),
                                Arg.messages("tooClose", named(stouter))),
                        FOUR_SIZES)
                .about(ids)
                .remedy(ReviewText.FUSE_THIN_WIRES.with());
    }

    /** The wires by size. */
    private static List<Message> named(List<Failure> failures) {
        Map<String, List<Thing>> bySize = new LinkedHashMap<>();
        failures.forEach(f -> bySize.computeIfAbsent(f.size().name(), key -> new ArrayList<>())
                .add(f.wire().thing()));
        return bySize.entrySet().stream()
                .map(e -> ReviewText.WIRES_OF_SIZE.with(Arg.things("wires", e.getValue()), arg("size", e.getKey())))
                .toList();
    }
}

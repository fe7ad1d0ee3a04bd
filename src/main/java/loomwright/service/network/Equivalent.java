package loomwright.service.network;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.expression.NetworkReduction;
import loomwright.expression.NetworkReduction.Method;
import loomwright.expression.Reduction;
import loomwright.message.Message;
import loomwright.network.CurrentSource;
import loomwright.network.Element;
import loomwright.network.Network;
import loomwright.network.Resistor;
import loomwright.network.VoltageSource;
import org.jspecify.annotations.Nullable;

/**
 * What the resistances of a network come to, seen from its only source, so that a person can follow the solution by hand.
 *
 * @param source id of the source
 * @param totalOhm absent if nothing joins the ends of the source
 * @param steps how, in the order done; none for a single resistance
 */
public record Equivalent(
        String source, Method method, @Nullable Double totalOhm, List<Reduction.Step> steps) {
    /** Nobody follows the steps of more resistances than these. */
    private static final int MOST_FOLLOWED = 50;

    public Equivalent {
        steps = List.copyOf(steps);
    }

    /** None for a network of anything but one source and resistances. */
    static @Nullable Equivalent of(Network network) {
        List<Element> sources = new ArrayList<>();
        List<Element> resistors = new ArrayList<>();
        for (Element element : network.elements()) {
            if (element instanceof Resistor) {
                resistors.add(element);
            } else if (element instanceof VoltageSource || element instanceof CurrentSource) {
                sources.add(element);
            } else {
                return null;
            }
        }
        if (sources.size() != 1 || resistors.isEmpty() || resistors.size() > MOST_FOLLOWED) {
            return null;
        }
        Element source = sources.get(0);
        NetworkReduction reduced = NetworkReduction.between(
                new Network(network.nodes(), resistors, network.reference()), source.from(), source.to());
        Double totalOhm = reduced.totalOhm().isPresent() ? reduced.totalOhm().getAsDouble() : null;
        return new Equivalent(source.id(), reduced.method(), totalOhm, reduced.steps());
    }

    /** The steps, with what they are and what they come to. */
    List<Message> working() {
        List<Message> lines = new ArrayList<>();
        lines.add(NetworkText.REDUCED.with(
                arg("source", source),
                arg("method", method.name().toLowerCase(Locale.ROOT).replace('_', '-'))));
        steps.forEach(step -> lines.add(step.working()));
        if (totalOhm != null) {
            lines.add(NetworkText.SEEN.with(arg("source", source), arg("totalOhm", totalOhm)));
        }
        return lines;
    }
}

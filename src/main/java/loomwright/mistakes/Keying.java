package loomwright.mistakes;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ConnectorHalf.Form;
import loomwright.circuit.Plan;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * Finds a form or width for one of two connectors with which neither can be crossed with any other.
 *
 * <p>Turning the gender round never suffices: each connector has a half of either gender, so that of two connectors of one form
 * and width some halves that do not belong together always mate.
 */
final class Keying {
    /** Usual widths of blades, and diameters of bullets, pins and rings, in mm (common practice, no source). */
    private static final List<Double> WIDTHS_MM = List.of(6.3, 4.8, 2.8, 9.5, 4.0, 5.0);

    private Keying() {}

    /** What to fit in place of {@code second}; absent if none of the usual forms helps. */
    static @Nullable Message change(Plan plan, String second) {
        Connector connector = plan.connectors().stream()
                .filter(c -> c.id().equals(second))
                .findFirst()
                .orElseThrow();
        ConnectorHalf one = half(plan, connector.halves().get(0));
        List<Form> forms = new ArrayList<>(List.of(one.form()));
        for (Form form : Form.values()) {
            if (form != one.form() && form != Form.RING) {
                forms.add(form);
            }
        }
        for (Form form : forms) {
            for (double widthMm : WIDTHS_MM) {
                boolean unique = plan.listParts(ConnectorHalf.class).stream()
                        .filter(h -> !connector.halves().contains(h.id()))
                        .noneMatch(h -> h.form() == form && h.widthMm() == widthMm);
                boolean carries = form != one.form() || widthMm >= one.widthMm() || one.ratingA() == null;
                if (unique && carries) {
                    return MistakeText.FIT_OTHER_CONTACTS.with(
                            arg("connector", plan.thing(second)),
                            arg("form", form),
                            arg("widthMm", widthMm),
                            arg("presentForm", one.form()),
                            arg("presentWidthMm", one.widthMm()));
                }
            }
        }
        return null;
    }

    private static ConnectorHalf half(Plan plan, String id) {
        return (ConnectorHalf) plan.findPart(id).orElseThrow();
    }
}

package loomwright.operation;

import java.util.OptionalDouble;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;

/** What is read off a plan solved in one step, however it was solved. */
public interface StepFigures {
    Step step();

    Plan plan();

    /** Whether there are figures at all. */
    boolean solved();

    /** Volts that a meter shows, red lead against black; empty where nothing joins the two points. */
    OptionalDouble volts(Probe probe);

    /** Whether a consumer is a load that its own voltage limits keep off. */
    boolean isOff(Consumer consumer);

    /** The voltage that a consumer acts on, V, not negative. */
    double effectiveV(Consumer consumer);

    /** How strongly a consumer is fed. */
    FeedStrength activity(Consumer consumer);

    /** Current of a wire, A; 0 if nothing can flow in it. */
    double currentA(Wire wire);

    /** The largest current of any branch of a part, its amount, A. */
    double mostA(Part part);
}

package loomwright.operation;

import java.util.Set;
import loomwright.circuit.Battery;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;

/** What a generator gives in a solved step, and what the batteries give beside it. */
public final class GeneratorOutput {
    private GeneratorOutput() {}

    /** What comes out at the output of a generator, A; 0 while it gives nothing. */
    public static double outputA(SolvedStep solved, Generator generator) {
        return givenA(
                solved,
                generator,
                generator.terminal(generator.outputTerminal()).toString(),
                generator.terminal(generator.returnTerminal()).toString());
    }

    /** What the batteries of the plan give together, A; 0 for one that is charged. */
    public static double batteriesA(SolvedStep solved) {
        return solved.plan().listParts(Battery.class).stream()
                .mapToDouble(battery -> givenA(
                        solved,
                        battery,
                        battery.terminal(Battery.PLUS).toString(),
                        battery.terminal(Battery.MINUS).toString()))
                .sum();
    }

    private static double givenA(SolvedStep solved, Part part, String output, String back) {
        double givenA = 0;
        for (int i = solved.firstBranchOf(part.id()); i < solved.endBranchOf(part.id()); i++) {
            Branch branch = solved.branches().get(i);
            if (Set.of(branch.from(), branch.to()).equals(Set.of(back, output)) && solved.powerW(i) < 0) {
                givenA += Math.abs(solved.currentA(i));
            }
        }
        return givenA;
    }
}

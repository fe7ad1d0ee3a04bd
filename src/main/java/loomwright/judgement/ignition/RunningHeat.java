package loomwright.judgement.ignition;

/** What a coil has to get rid of in the mean while the engine runs. */
@FunctionalInterface
public interface RunningHeat {
    /**
     * Mean heat in the coil of a circuit, at the speed at which it is hottest.
     *
     * @return W, 0 or more
     */
    double meanW(PrimaryLoop loop);
}

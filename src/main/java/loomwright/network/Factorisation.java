package loomwright.network;

/** A conductance matrix taken apart so that it can be solved with. Holds work space: for one thread. */
interface Factorisation {
    /**
     * Takes the matrix of these branches apart.
     *
     * @return false if it is not positive definite
     */
    boolean factor(ConductanceMatrix matrix);

    /** Solves in place. */
    void solve(double[] rightSide);
}

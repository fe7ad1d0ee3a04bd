package loomwright.circuit.fault;

/** A fault that may be slight or bad: how bad, is found from what a meter shows. */
public sealed interface SizedFault extends SingleFault
        permits BadJoint, BatteryFault, ShortToEarth, ShortBetween, OffValue, WornContact {
    /** How severe it is, above 0; more is worse. */
    double size();

    /** The least that is worth looking for. */
    double smallest();

    /** The worst there is; more makes no difference. */
    double largest();

    /** The same fault, slighter or worse; what is beyond the worst is the worst, and what is no fault any more the slightest. */
    SizedFault withSize(double size);
}

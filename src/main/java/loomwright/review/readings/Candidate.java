package loomwright.review.readings;

import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.review.readings.ReadingsSheet.Purpose;
import org.jspecify.annotations.Nullable;

/** A reading worth taking, before its figures are known. */
record Candidate(
        Purpose purpose,
        Situation situation,
        @Nullable String circuit,
        Quantity quantity,
        Probe probe,
        String tells) {}

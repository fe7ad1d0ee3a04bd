package loomwright.readings;

import loomwright.message.Message;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsSheet.Purpose;
import org.jspecify.annotations.Nullable;

/** A reading worth taking, before its figures are known. */
record ReadingCandidate(
        Purpose purpose,
        ReadingState situation,
        @Nullable String circuit,
        Quantity quantity,
        Probe probe,
        Message tells) {}

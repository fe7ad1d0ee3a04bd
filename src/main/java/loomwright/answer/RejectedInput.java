package loomwright.answer;

import java.util.List;
import java.util.stream.Collectors;

/** The input cannot be calculated with; carries every fault that was found, not only the first. */
public final class RejectedInput extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<InputError> faults;

    /**
     * Rejects for several reasons.
     *
     * @param faults at least one
     */
    public RejectedInput(List<InputError> faults) {
        super(faults.stream()
                .map(f ->
                        f.code() + " at '" + f.pointer() + "': " + f.accepted().text())
                .collect(Collectors.joining("; ")));
        if (faults.isEmpty()) {
            throw new IllegalArgumentException("rejected without a fault");
        }
        this.faults = List.copyOf(faults);
    }

    public RejectedInput(InputError fault) {
        this(List.of(fault));
    }

    public List<InputError> faults() {
        return faults;
    }
}

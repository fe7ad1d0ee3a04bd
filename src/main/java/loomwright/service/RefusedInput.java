package loomwright.service;

import loomwright.answer.RejectedInput;

/** Input of which it is known already that it cannot be read. */
record RefusedInput(Refusal why) implements Input {
    @Override
    public <T> T read(Class<T> type) {
        throw why;
    }

    @Override
    public Refusal refusal(RejectedInput rejected) {
        return why;
    }
}

package loomwright.service.endpoint;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/** Whether requests are to be sent here: not while the first would wait for what is still being loaded, nor before a stop. */
public final class Readiness {
    private static final String RETRY_AFTER_S = "1";

    private volatile State state = State.READY;

    private enum State {
        READY("ready"),
        WARMING_UP("warming up"),
        STOPPING("stopping");

        private final String words;

        State(String words) {
            this.words = words;
        }
    }

    /** What is answered. */
    private record Ready(String status) {}

    public synchronized void warmingUp() {
        state = State.WARMING_UP;
    }

    /** The end of warming up, unless a stop has come before. */
    public synchronized void warm() {
        if (state == State.WARMING_UP) {
            state = State.READY;
        }
    }

    public synchronized void stopping() {
        state = State.STOPPING;
    }

    /**
     * Tells it.
     *
     * @throws ProblemException 503 if it is not ready
     */
    public Reply handle(Request request) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        State now = state;
        if (now != State.READY) {
            throw new ProblemException(
                    ProblemType.NOT_READY,
                    ProblemText.NOT_READY.with(arg("state", now.words)),
                    List.of(),
                    Map.of("Retry-After", RETRY_AFTER_S, "Cache-Control", "no-store"));
        }
        return Reply.of(Json.MEDIA_TYPE, request.json().write(new Ready(now.words)))
                .withHeaders(Map.of("Cache-Control", "no-store"));
    }
}

package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A machine that lets the service write nowhere, whose log is full, and that shuts down while a bulk run is on its way. */
class PoorMachineTest {
    /** Each write to it fails as on a full disk. */
    private static final File FULL = new File("/dev/full");

    private static final int LINES = 20;

    /** The status of a process that ended by SIGTERM. */
    private static final int TERMINATED = 143;

    private static final byte[] PLAN =
            LiveService.ask().get("/v1/examples/sandpiper-as-built").asByteArray();

    private OtherService service;

    @BeforeEach
    void start(@TempDir Path folder) throws IOException, InterruptedException {
        Path nowhere = folder.resolve("no-such-folder");
        service = OtherService.start(List.of("-Djava.io.tmpdir=" + nowhere, "-Duser.home=" + nowhere), FULL);
    }

    @AfterEach
    void stop() {
        service.close();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/plans/review",
                "/v1/plans/diagram",
                "/v1/plans/diagram?format=png",
                "/v1/plans/conversion?format=xlsx",
                "/v1/plans/conversion?format=ods"
            })
    void whatIsAskedIsAnsweredWithoutAFileOrALog(String path) throws IOException, InterruptedException {
        assertThat(OtherService.status(service.post(path, PLAN))).isEqualTo(200);
    }

    /** The sender has sent some lines and is about to send more. */
    @Test
    void aBulkRunThatIsStoppedSaysWhereToGoOn() throws IOException, InterruptedException {
        byte[] lines = (new JsonMapper().readTree(PLAN) + "\n").repeat(LINES).getBytes(StandardCharsets.UTF_8);
        try (Socket socket = service.connect()) {
            OutputStream out = socket.getOutputStream();
            out.write(("POST /v1/bulk/solution HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-ndjson\r\n"
                            + "Transfer-Encoding: chunked\r\n\r\n" + Integer.toHexString(lines.length) + "\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            out.write(lines);
            out.write("\r\n".getBytes(StandardCharsets.US_ASCII));
            out.flush();
            BufferedReader answers =
                    new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            int answered = 0;
            while (answered < LINES) {
                answered += answers.readLine().startsWith("{\"line\":") ? 1 : 0;
            }
            service.terminate();
            String summary = answers.lines()
                    .filter(line -> line.startsWith("{\"summary\":"))
                    .findFirst()
                    .orElseThrow();

            assertThat(new JsonMapper()
                            .readTree(summary)
                            .at("/summary/nextLine")
                            .asInt())
                    .isEqualTo(LINES + 1);
        }
        assertThat(service.exitStatus()).isEqualTo(TERMINATED);
    }
}

package loomwright.service.stream;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import loomwright.bulk.Line;
import loomwright.bulk.Summary;
import loomwright.service.endpoint.Calculation.Worked;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * One JSON object a line; an answer stands in it byte for byte as it would stand alone.
 *
 * @param withFile whether the lines are those of several files, so that no number alone says where to go on
 */
public record JsonLineForm(Json json, boolean withFile) implements LineForm {
    public JsonLineForm(Json json) {
        this(json, false);
    }

    /** The last line. */
    private record SummaryLine(Said summary) {}

    private record Said(
            String operation,
            boolean complete,
            long answers,
            long problems,
            long blank,
            long passedOver,
            @Nullable Long nextLine,
            List<Summary.Count> findings,
            @Nullable Problem problem) {}

    @Override
    public byte[] head() {
        return new byte[0];
    }

    @Override
    public byte[] answer(Line line, @Nullable JsonNode key, Worked worked) throws IOException {
        return line(line, key, "answer", json.write(worked.said()));
    }

    @Override
    public byte[] problem(Line line, @Nullable JsonNode key, Problem problem) throws IOException {
        return line(line, key, "problem", json.write(problem));
    }

    private byte[] line(Line line, @Nullable JsonNode key, String name, byte[] value) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream(value.length + 100);
        out.write('{');
        if (line.file() != null) {
            write(out, "\"file\":");
            out.write(json.write(line.file()));
            out.write(',');
        }
        write(out, "\"line\":" + line.number() + ",");
        if (key != null) {
            write(out, "\"key\":");
            out.write(json.write(key));
            out.write(',');
        }
        write(out, "\"" + name + "\":");
        out.write(value);
        write(out, "}\n");
        return out.toByteArray();
    }

    private static void write(ByteArrayOutputStream out, String text) {
        out.writeBytes(text.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public byte[] beginning(Line line) {
        return (withFile ? "{" : "{\"line\":" + line.number() + ",").getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public byte[] summary(Ended ended) throws IOException {
        Summary s = ended.summary();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(json.write(new SummaryLine(new Said(
                ended.operation(),
                s.complete(),
                s.answers(),
                s.problems(),
                s.blank(),
                s.passedOver(),
                withFile ? null : Long.valueOf(s.nextLine()),
                s.findings(),
                ended.problem()))));
        out.write('\n');
        return out.toByteArray();
    }
}

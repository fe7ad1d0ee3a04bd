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
 * @param from where the lines come from
 */
public record JsonLineForm(Json json, From from) implements LineForm {
    /** Where lines come from, which is how much must be said of them. */
    public enum From {
        /** One request: each answer has its number, and the summary says where to go on. */
        REQUEST,
        /** Several files: no number alone says where to go on. */
        FILES,
        /** A pipe, perhaps a share of many lines: the answers alone, so that those of the shares are those of all. */
        PIPE
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
        if (from != From.PIPE) {
            write(out, "\"line\":" + line.number() + ",");
        }
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
    public String suffix(Line line) {
        return from == From.PIPE ? "" : LineForm.super.suffix(line);
    }

    @Override
    public byte[] beginning(Line line) {
        return (from == From.REQUEST ? "{\"line\":" + line.number() + "," : "{").getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public byte[] summary(Ended ended) throws IOException {
        if (from == From.PIPE && ended.problem() == null) {
            return new byte[0];
        }
        Summary s = ended.summary();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(json.write(new SummaryLine(new Said(
                ended.operation(),
                s.complete(),
                s.answers(),
                s.problems(),
                s.blank(),
                s.passedOver(),
                from == From.REQUEST ? Long.valueOf(s.nextLine()) : null,
                s.findings(),
                ended.problem()))));
        out.write('\n');
        return out.toByteArray();
    }
}

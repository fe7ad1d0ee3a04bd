package loomwright.service.form;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loomwright.message.Argument.Verbatim;

/**
 * As much of a {@link Markdown} text as a forum post may hold, cut between lines, with a last line that tells what was
 * left out. The title and the cautions always stay.
 */
public final class TruncatedMarkdown {
    /** Shortest limit: title, all cautions and the last line fit into it. */
    public static final int SHORTEST = 2_000;

    private static final String HEADING = "## ";
    private static final Pattern BELOW_COLUMNS = Pattern.compile("\\|( --- \\|)+");

    /** What is asked of a list, and how it was read, stand before the findings. Neither must drive them out of the post. */
    private static final int SHARE_OF_READING = 4;

    private final List<Section> sections = new ArrayList<>();

    private TruncatedMarkdown(String text) {
        List<String> lines = new ArrayList<>();
        for (String line : text.lines().toList()) {
            if (line.startsWith(HEADING)) {
                sections.add(new Section(List.copyOf(lines)));
                lines.clear();
            }
            lines.add(line);
        }
        sections.add(new Section(List.copyOf(lines)));
    }

    /**
     * The text, cut if need be.
     *
     * @param maxLength characters, {@link #SHORTEST} or more
     */
    public static String of(String text, int maxLength) {
        return text.length() <= maxLength ? text : new TruncatedMarkdown(text).cut(maxLength);
    }

    private String cut(int maxLength) {
        List<String> longest = sections.stream()
                .filter(section -> !section.stays())
                .map(Section::cutShort)
                .toList();
        int room = maxLength - last(longest, maxLength).length() - 1;
        for (Section section : sections) {
            room -= section.stays() ? length(section.lines()) : 0;
        }
        List<String> kept = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        boolean full = false;
        for (Section section : sections) {
            int own = section.isOfReading() ? room / SHARE_OF_READING : full ? 0 : room;
            List<String> fits = section.stays() ? section.lines() : section.first(own);
            kept.addAll(fits);
            room -= section.stays() ? 0 : length(fits);
            if (fits.size() < section.lines().size()) {
                full |= !section.isOfReading();
                leftOut.add(fits.isEmpty() ? section.name() : section.cutShort(entries(fits)));
                if (!fits.isEmpty()) {
                    kept.add("");
                }
            }
        }
        return kept.stream().map(line -> line + "\n").collect(Collectors.joining()) + last(leftOut, maxLength);
    }

    private static String last(List<String> leftOut, int maxLength) {
        return "*"
                + PostText.LEFT_OUT
                        .with(
                                arg("most", new Verbatim(String.valueOf(maxLength))),
                                arg("what", String.join("; ", leftOut)))
                        .text()
                + "*\n";
    }

    private static int length(List<String> lines) {
        return lines.stream().mapToInt(line -> line.length() + 1).sum();
    }

    /** Lines that say something by themselves. */
    private static int entries(List<String> lines) {
        int heads = (int) lines.stream()
                .filter(line -> BELOW_COLUMNS.matcher(line).matches())
                .count();
        return (int) lines.stream()
                        .filter(line -> !line.isEmpty() && !line.startsWith(HEADING))
                        .count()
                - 2 * heads;
    }

    /** A heading and what stands under it; the first has the title for its heading. */
    private record Section(List<String> lines) {
        boolean stays() {
            return lines.isEmpty()
                    || !lines.get(0).startsWith(HEADING)
                    || lines.get(0).equals(HEADING + PostText.CAUTIONS.text());
        }

        boolean isOfReading() {
            return !lines.isEmpty()
                    && (lines.get(0).equals(HEADING + PostText.QUESTIONS.text())
                            || lines.get(0).equals(HEADING + PostText.AS_READ.text()));
        }

        /** As many lines as fit, but neither a heading nor the head of a table alone. */
        List<String> first(int room) {
            int count = 0;
            int used = 0;
            while (count < lines.size() && used + lines.get(count).length() + 1 <= room) {
                used += lines.get(count).length() + 1;
                count++;
            }
            while (count > 0 && count < lines.size() && saysNothing(count - 1)) {
                count--;
            }
            return lines.subList(0, count);
        }

        private boolean saysNothing(int at) {
            String line = lines.get(at);
            return line.isEmpty()
                    || line.startsWith(HEADING)
                    || BELOW_COLUMNS.matcher(line).matches()
                    || (at + 1 < lines.size()
                            && BELOW_COLUMNS.matcher(lines.get(at + 1)).matches());
        }

        String name() {
            return "\"" + lines.get(0).replaceFirst("^" + HEADING, "") + "\"";
        }

        /** What to say if only some of its lines are kept; none is longer than for no line. */
        String cutShort(int kept) {
            int all = entries(lines);
            return PostText.LINES_OF
                    .with(arg("left", all - kept), arg("all", all), arg("section", name()))
                    .text();
        }

        String cutShort() {
            return cutShort(0);
        }
    }
}

package loomwright.list;

import java.util.List;

/**
 * What a file or a text holds.
 *
 * @param sheets in their order
 * @param sentences lines of text that stand outside every table
 */
public record ListSource(List<Sheet> sheets, List<String> sentences) {
    public ListSource {
        sheets = List.copyOf(sheets);
        sentences = List.copyOf(sentences);
    }
}

package loomwright.catalogue;

import java.util.List;

/**
 * A kind of part of the plan document.
 *
 * @param kind the word of the document
 * @param name what to call it in a sentence
 * @param words what else an owner calls it
 * @param model how it is calculated, in one line
 */
public record PartKind(String kind, String name, List<String> words, String model) {
    public PartKind {
        words = List.copyOf(words);
    }
}

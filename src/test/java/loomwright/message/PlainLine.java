package loomwright.message;

import static loomwright.message.Arg.arg;

import java.util.List;

/** A message that says a given text, for tests of what shows messages. */
public enum PlainLine implements MessageCode {
    LINE,
    OTHER;

    public static List<Message> lines(List<String> texts) {
        return texts.stream().map(text -> LINE.with(arg("part", text))).toList();
    }

    /** A text of the catalogue that is its argument. */
    @Override
    public String key() {
        return "work-text.earthed-at";
    }
}

package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;

/** The word for each kind of part, as its class names it. */
final class KindWords {
    static final ClassValue<String> OF_CLASS = new ClassValue<>() {
        @Override
        protected String computeValue(Class<?> kind) {
            return kind.getAnnotation(JsonTypeName.class).value();
        }
    };

    private KindWords() {}
}

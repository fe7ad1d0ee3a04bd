package loomwright.service.input;

import com.fasterxml.jackson.databind.cfg.MapperConfig;
import com.fasterxml.jackson.databind.introspect.AnnotatedClass;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import loomwright.service.form.EnumWords;

/** EnumWords of a closed set are written {@code common-practice} in JSON and {@code COMMON_PRACTICE} in Java. */
final class EnumSpelling extends JacksonAnnotationIntrospector {
    private static final long serialVersionUID = 1L;

    @Override
    public String[] findEnumValues(
            MapperConfig<?> config, AnnotatedClass annotatedClass, Enum<?>[] enumValues, String[] names) {
        String[] annotated = super.findEnumValues(config, annotatedClass, enumValues, names);
        for (int i = 0; i < enumValues.length; i++) {
            if (annotated[i] == null) {
                annotated[i] = EnumWords.of(enumValues[i]);
            }
        }
        return annotated;
    }
}

package loomwright.answer;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The properties of a record as JSON has them: those of a smaller record within it stand in its place. */
public final class RecordProperties {
    private RecordProperties() {}

    /** The type of each property, in their order. */
    public static Map<String, Type> types(Class<?> record) {
        Map<String, Type> types = new LinkedHashMap<>();
        for (RecordComponent component : record.getRecordComponents()) {
            if (isFlat(component)) {
                types.putAll(types(component.getType()));
            } else {
                types.put(component.getName(), component.getGenericType());
            }
        }
        return types;
    }

    /** The values of a record, without those that are absent. */
    public static Map<String, Object> values(Record record) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Object value = read(record, component);
            if (value != null && isFlat(component)) {
                values.putAll(values((Record) value));
            } else if (value != null) {
                values.put(component.getName(), value);
            }
        }
        return values;
    }

    /** Whether smaller records stand in it. */
    public static boolean holdsRecords(Class<?> record) {
        return Stream.of(record.getRecordComponents()).anyMatch(RecordProperties::isFlat);
    }

    private static boolean isFlat(RecordComponent component) {
        return component.getAccessor().isAnnotationPresent(JsonUnwrapped.class);
    }

    private static @Nullable Object read(Record record, RecordComponent component) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component + " cannot be read", e);
        }
    }
}

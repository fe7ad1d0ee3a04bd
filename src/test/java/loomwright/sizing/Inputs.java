package loomwright.sizing;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Makes input records from the few values a test is about: {@code Inputs.drop("currentA", 20.0, "size", "14")}. */
final class Inputs {
    private Inputs() {}

    static VoltageDrop.Input drop(Object... namesAndValues) {
        return make(VoltageDrop.Input.class, namesAndValues);
    }

    static ConductorSizing.Input sizing(Object... namesAndValues) {
        return make(ConductorSizing.Input.class, namesAndValues);
    }

    static FuseChoice.Input fuse(Object... namesAndValues) {
        return make(FuseChoice.Input.class, namesAndValues);
    }

    /** The same values, and insulation for 105 C unless they name another. */
    static Object[] insulation105C(Object... namesAndValues) {
        List<Object> all = new ArrayList<>(Arrays.asList(namesAndValues));
        if (!all.contains("insulationC")) {
            all.addAll(List.of("insulationC", 105.0));
        }
        return all.toArray();
    }

    private static <T extends Record> T make(Class<T> type, Object... namesAndValues) {
        Map<String, Object> values = new HashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            values.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        T made = fill(type, values);
        if (!values.isEmpty()) {
            throw new IllegalArgumentException("no such property: " + values.keySet());
        }
        return made;
    }

    private static <T> T fill(Class<T> type, Map<String, Object> values) {
        RecordComponent[] components = type.getRecordComponents();
        Object[] arguments = Arrays.stream(components)
                .map(c -> c.getAccessor().isAnnotationPresent(JsonUnwrapped.class)
                        ? fill(c.getType(), values)
                        : values.remove(c.getName()))
                .toArray();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return type.getDeclaredConstructor(types).newInstance(arguments);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}

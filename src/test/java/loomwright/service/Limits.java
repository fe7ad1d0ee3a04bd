package loomwright.service;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import loomwright.service.limits.ServiceLimits;

/** The usual limits of the service, some of them changed. */
final class Limits {
    private Limits() {}

    /** Changed by the names of {@link ServiceLimits}. */
    static ServiceLimits with(Map<String, Integer> changed) {
        Map<String, Integer> left = new HashMap<>(changed);
        ServiceLimits limits = (ServiceLimits) changed(ServiceLimits.DEFAULT, left);
        if (!left.isEmpty()) {
            throw new IllegalArgumentException(left.keySet() + ": no limits of the service");
        }
        return limits;
    }

    private static Record changed(Record usual, Map<String, Integer> changes) {
        RecordComponent[] components = usual.getClass().getRecordComponents();
        Object[] values = new Object[components.length];
        try {
            for (int i = 0; i < components.length; i++) {
                Object value = components[i].getAccessor().invoke(usual);
                Integer other = changes.remove(components[i].getName());
                values[i] = value instanceof Record part ? changed(part, changes) : other == null ? value : other;
            }
            Class<?>[] types =
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            return (Record) usual.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("limits of the service " + changes, e);
        }
    }
}

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
        RecordComponent[] components = ServiceLimits.class.getRecordComponents();
        Object[] values = new Object[components.length];
        try {
            for (int i = 0; i < components.length; i++) {
                Integer value = left.remove(components[i].getName());
                values[i] = value == null ? components[i].getAccessor().invoke(ServiceLimits.DEFAULT) : value;
            }
            if (!left.isEmpty()) {
                throw new IllegalArgumentException(left.keySet() + ": no limits of the service");
            }
            Class<?>[] types =
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            return ServiceLimits.class.getDeclaredConstructor(types).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("limits of the service " + changed, e);
        }
    }
}

package loomwright.service.input;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Numbers as JSON Schema sees them: {@code 1.0} is an integer, {@code 1.5} and {@code "1"} are not, and a number that no
 * double can hold is said to be so instead of becoming infinite.
 */
final class StrictNumbers {
    private StrictNumbers() {}

    static SimpleModule module() {
        SimpleModule module = new SimpleModule("strict numbers");
        module.addDeserializer(Double.class, new Doubles(Double.class));
        module.addDeserializer(double.class, new Doubles(double.class));
        module.addDeserializer(Integer.class, new Integers(Integer.class));
        module.addDeserializer(int.class, new Integers(int.class));
        return module;
    }

    private static final class Doubles extends StdScalarDeserializer<Double> {
        private static final long serialVersionUID = 1L;

        Doubles(Class<?> type) {
            super(type);
        }

        @Override
        public Double deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!parser.currentToken().isNumeric()) {
                return (Double) context.handleUnexpectedToken(Double.class, parser);
            }
            double value = parser.getDoubleValue();
            if (!Double.isFinite(value)) {
                return (Double) context.handleWeirdNumberValue(Double.class, value, "too large for a double");
            }
            return value;
        }

        @Override
        public @Nullable Double getNullValue(DeserializationContext context) throws JsonMappingException {
            refuseNullForPrimitive(_valueClass, context);
            return null;
        }
    }

    private static final class Integers extends StdScalarDeserializer<Integer> {
        private static final long serialVersionUID = 1L;

        Integers(Class<?> type) {
            super(type);
        }

        @Override
        public Integer deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.hasToken(JsonToken.VALUE_NUMBER_INT)) {
                return parser.getIntValue();
            }
            if (parser.hasToken(JsonToken.VALUE_NUMBER_FLOAT)) {
                BigDecimal value = parser.getDecimalValue();
                if (value.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) <= 0
                        && value.stripTrailingZeros().scale() <= 0) {
                    return value.intValueExact();
                }
            }
            return (Integer) context.handleUnexpectedToken(Integer.class, parser);
        }

        @Override
        public @Nullable Integer getNullValue(DeserializationContext context) throws JsonMappingException {
            refuseNullForPrimitive(_valueClass, context);
            return null;
        }
    }

    private static void refuseNullForPrimitive(Class<?> type, DeserializationContext context)
            throws JsonMappingException {
        if (type.isPrimitive()) {
            context.reportInputMismatch(type, "no value for a required number");
        }
    }
}

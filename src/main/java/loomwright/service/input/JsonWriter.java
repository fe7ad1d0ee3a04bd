package loomwright.service.input;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;

/** How a value of one type is written as JSON. */
@FunctionalInterface
interface JsonWriter<T> {
    void write(T value, JsonGenerator out, SerializerProvider provider) throws IOException;

    /** As Jackson takes it. */
    static <T> JsonSerializer<T> serializer(Class<T> type, JsonWriter<T> writer) {
        return new StdSerializer<>(type) {
            private static final long serialVersionUID = 1L;

            @Override
            public void serialize(T value, JsonGenerator out, SerializerProvider provider) throws IOException {
                writer.write(value, out, provider);
            }
        };
    }
}

package loomwright.service.input;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import loomwright.backfeed.BackfeedReport.PatchOperation;
import loomwright.circuit.Part;

/** How an operation of a JSON Patch is written: the value as it stands in a plan document, a part with its kind. */
final class PatchModule {
    private PatchModule() {}

    static SimpleModule module() {
        SimpleModule module = new SimpleModule("patches");
        module.addSerializer(PatchOperation.class, JsonWriter.serializer(PatchOperation.class, PatchModule::write));
        return module;
    }

    private static void write(PatchOperation operation, JsonGenerator out, SerializerProvider provider)
            throws IOException {
        out.writeStartObject();
        out.writeStringField("op", operation.op());
        out.writeStringField("path", operation.path());
        Object value = operation.value();
        if (value instanceof Part) {
            out.writeFieldName("value");
            provider.findTypedValueSerializer(value.getClass(), true, null).serialize(value, out, provider);
        } else if (value != null) {
            provider.defaultSerializeField("value", value, out);
        }
        out.writeEndObject();
    }
}

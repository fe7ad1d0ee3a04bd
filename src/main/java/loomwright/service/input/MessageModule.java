package loomwright.service.input;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.util.Map;
import loomwright.answer.Assumption;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.backfeed.BackfeedReport.Clue;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.message.Argument;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Argument.Thing;
import loomwright.message.Argument.Verbatim;
import loomwright.message.Argument.Word;
import loomwright.message.Catalogue;
import loomwright.message.Message;
import loomwright.network.NetworkFinding;
import loomwright.operation.StepFinding;

/**
 * How messages are written: {@code code}, {@code arguments} if there are any, {@code text}. A quantity is a number whose
 * name says its unit, a thing of the plan its id and label, a word of a closed set that word.
 */
final class MessageModule {
    private MessageModule() {}

    static SimpleModule module() {
        SimpleModule module = new SimpleModule("messages");
        add(module, Message.class, MessageModule::write);
        add(module, Finding.class, MessageModule::write);
        add(module, StepFinding.class, MessageModule::write);
        add(module, NetworkFinding.class, MessageModule::write);
        add(module, Leftover.class, MessageModule::write);
        add(module, Clue.class, MessageModule::write);
        add(module, Instant.class, MessageModule::writeWithText);
        add(module, Caution.class, (caution, out, provider) -> write(caution.with(), out, provider));
        add(module, Assumption.class, MessageModule::write);
        return module;
    }

    private static <T> void add(SimpleModule module, Class<T> type, JsonWriter<T> members) {
        module.addSerializer(type, JsonWriter.serializer(type, (value, out, provider) -> {
            out.writeStartObject();
            members.write(value, out, provider);
            out.writeEndObject();
        }));
    }

    private static void write(Message message, JsonGenerator out, SerializerProvider provider) throws IOException {
        out.writeStringField("code", message.code().code());
        if (!message.arguments().isEmpty()) {
            out.writeObjectFieldStart("arguments");
            for (Map.Entry<String, Argument> argument : message.arguments().entrySet()) {
                out.writeFieldName(argument.getKey());
                write(argument.getValue(), out, provider);
            }
            out.writeEndObject();
        }
        out.writeStringField("text", message.text());
    }

    private static void write(Argument argument, JsonGenerator out, SerializerProvider provider) throws IOException {
        if (argument instanceof Quantity quantity) {
            provider.defaultSerializeValue(quantity.value(), out);
        } else if (argument instanceof Count count) {
            out.writeNumber(count.value());
        } else if (argument instanceof Verbatim verbatim) {
            out.writeString(verbatim.text());
        } else if (argument instanceof Word word) {
            out.writeString(word.code().code());
        } else if (argument instanceof Nested nested) {
            out.writeStartObject();
            write(nested.message(), out, provider);
            out.writeEndObject();
        } else if (argument instanceof Thing thing) {
            out.writeStartObject();
            write(thing, out);
            out.writeEndObject();
        } else if (argument instanceof SwitchPosition at) {
            out.writeStartObject();
            write(at.operated(), out);
            out.writeStringField("position", at.position());
            out.writeEndObject();
        } else if (argument instanceof Instant instant) {
            out.writeStartObject();
            write(instant, out, provider);
            out.writeEndObject();
        } else if (argument instanceof Listing list) {
            out.writeStartArray();
            for (Argument item : list.items()) {
                write(item, out, provider);
            }
            out.writeEndArray();
        }
    }

    private static void write(Instant instant, JsonGenerator out, SerializerProvider provider) throws IOException {
        out.writeStringField("step", instant.step().code());
        out.writeArrayFieldStart("switches");
        for (SwitchPosition at : instant.switches()) {
            write((Argument) at, out, provider);
        }
        out.writeEndArray();
    }

    /** As a property of its own, not within a message that says it in words already. */
    private static void writeWithText(Instant instant, JsonGenerator out, SerializerProvider provider)
            throws IOException {
        write(instant, out, provider);
        out.writeStringField("text", Catalogue.inUse().text(instant));
    }

    private static void write(Thing thing, JsonGenerator out) throws IOException {
        out.writeStringField("id", thing.id());
        out.writeStringField("label", thing.label());
    }

    private static void write(Finding value, JsonGenerator out, SerializerProvider provider) throws IOException {
        provider.defaultSerializeField("severity", value.severity(), out);
        write(value.message(), out, provider);
        provider.defaultSerializeField("ids", value.ids(), out);
        provider.defaultSerializeField("basis", value.basis(), out);
        if (value.remedy() != null) {
            provider.defaultSerializeField("remedy", value.remedy(), out);
        }
        if (!value.restsOn().isEmpty()) {
            provider.defaultSerializeField("restsOn", value.restsOn(), out);
        }
    }

    private static void write(StepFinding value, JsonGenerator out, SerializerProvider provider) throws IOException {
        provider.defaultSerializeField("severity", value.kind().severity(), out);
        write(value.message(), out, provider);
        provider.defaultSerializeField("ids", value.ids(), out);
    }

    private static void write(NetworkFinding value, JsonGenerator out, SerializerProvider provider) throws IOException {
        write(value.message(), out, provider);
        provider.defaultSerializeField("elementIds", value.elementIds(), out);
        provider.defaultSerializeField("nodes", value.nodes(), out);
    }

    private static void write(Leftover value, JsonGenerator out, SerializerProvider provider) throws IOException {
        write(value.message(), out, provider);
        out.writeStringField("id", value.id());
        if (value.terminal() != null) {
            out.writeStringField("terminal", value.terminal());
        }
        provider.defaultSerializeField("liveIn", value.liveIn(), out);
        provider.defaultSerializeField("highestV", value.highestV(), out);
        provider.defaultSerializeField("remedy", value.remedy(), out);
    }

    private static void write(Clue value, JsonGenerator out, SerializerProvider provider) throws IOException {
        write(value.message(), out, provider);
        provider.defaultSerializeField("ids", value.ids(), out);
    }

    /** The code is that of the rule by which it was filled in. */
    private static void write(Assumption value, JsonGenerator out, SerializerProvider provider) throws IOException {
        out.writeStringField("code", value.code());
        provider.defaultSerializeField("ids", value.ids(), out);
        provider.defaultSerializeField("assumed", value.assumed(), out);
        out.writeStringField("text", value.text().text());
        provider.defaultSerializeField("findings", value.findings(), out);
    }
}

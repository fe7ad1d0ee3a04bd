package loomwright.service.input;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.JsonParserDelegate;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.deser.BeanDeserializerModifier;
import com.fasterxml.jackson.databind.deser.std.DelegatingDeserializer;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.util.NameTransformer;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import loomwright.answer.RecordProperties;

/**
 * Rejects properties that a record does not have where some of its components are written in its place
 * ({@link JsonUnwrapped}); Jackson by itself lets them pass there.
 */
final class FlatRecords extends BeanDeserializerModifier {
    private static final long serialVersionUID = 1;

    static SimpleModule module() {
        return new SimpleModule("flat-records").setDeserializerModifier(new FlatRecords());
    }

    @Override
    public JsonDeserializer<?> modifyDeserializer(
            DeserializationConfig config, BeanDescription bean, JsonDeserializer<?> deserializer) {
        Class<?> type = bean.getBeanClass();
        return type.isRecord() && RecordProperties.holdsRecords(type)
                ? new StrictDeserializer(
                        deserializer, type, RecordProperties.types(type).keySet())
                : deserializer;
    }

    private static final class StrictDeserializer extends DelegatingDeserializer {
        private static final long serialVersionUID = 1;

        private final Class<?> type;
        private final Set<String> names;

        StrictDeserializer(JsonDeserializer<?> reader, Class<?> type, Set<String> names) {
            super(reader);
            this.type = type;
            this.names = names;
        }

        @Override
        protected JsonDeserializer<?> newDelegatingInstance(JsonDeserializer<?> reader) {
            return new StrictDeserializer(reader, type, names);
        }

        @Override
        public JsonDeserializer<Object> unwrappingDeserializer(NameTransformer names) {
            @SuppressWarnings("unchecked")
            JsonDeserializer<Object> reader = (JsonDeserializer<Object>) _delegatee;
            return reader.unwrappingDeserializer(names);
        }

        @Override
        public Object deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            KnownNames known = new KnownNames(parser, type, names);
            if (parser.hasToken(JsonToken.FIELD_NAME)) {
                known.check();
            }
            return super.deserialize(known, context);
        }
    }

    /** Reads one object and stops at a property that is none of its own. */
    private static final class KnownNames extends JsonParserDelegate {
        private final Class<?> type;
        private final Set<String> names;
        private int depth;

        KnownNames(JsonParser parser, Class<?> type, Set<String> names) {
            super(parser);
            this.type = type;
            this.names = names;
        }

        @Override
        public JsonToken nextToken() throws IOException {
            JsonToken token = super.nextToken();
            if (token == null) {
                return token;
            }
            if (token.isStructStart()) {
                depth++;
            } else if (token.isStructEnd()) {
                depth--;
            } else if (token == JsonToken.FIELD_NAME && depth == 0) {
                check();
            }
            return token;
        }

        @Override
        public JsonToken nextValue() throws IOException {
            JsonToken token = nextToken();
            return token == JsonToken.FIELD_NAME ? nextToken() : token;
        }

        @Override
        public JsonParser skipChildren() throws IOException {
            JsonToken token = currentToken();
            super.skipChildren();
            if (token != null && token.isStructStart()) {
                depth--;
            }
            return this;
        }

        void check() throws IOException {
            if (!names.contains(currentName())) {
                throw UnrecognizedPropertyException.from(this, type, currentName(), List.copyOf(names));
            }
        }
    }
}

package loomwright.service.input;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.databind.type.LogicalType;
import java.io.IOException;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.comparison.PropertyValue;
import loomwright.diagnosis.MeterReading;
import loomwright.service.form.PlainDecimal;
import loomwright.service.form.SignificantDigits;
import loomwright.service.limits.ServiceLimits;

/** How JSON is read (strictly) and written (rounded, absent values left out). */
public final class Json {
    public static final String MEDIA_TYPE = "application/json";

    /** One JSON value a line. */
    public static final String LINES = "application/x-ndjson";

    private final JsonMapper mapper;
    private final JsonMapper exactMapper;

    public Json(ServiceLimits limits) {
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
                .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(limits.json().nestingDepth())
                        .maxStringLength(limits.json().stringChars())
                        .maxNameLength(limits.json().nameChars())
                        .maxNumberLength(limits.json().numberChars())
                        .maxDocumentLength(limits.bodyBytes())
                        .maxTokenCount(limits.json().tokens())
                        .build())
                .build();
        JsonMapper.Builder builder = JsonMapper.builder(factory)
                .enable(
                        DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                        DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS,
                        DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .defaultPropertyInclusion(
                        JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.USE_DEFAULTS))
                .addMixIn(Answer.class, AnswerOnTheWire.class)
                .addMixIn(MeterReading.class, RowOfTheSheet.class)
                .annotationIntrospector(new EnumSpelling())
                .addModule(StrictNumbers.module())
                .addModule(FlatRecords.module())
                .addModule(written())
                .addModule(MessageModule.module())
                .addModule(PatchModule.module());
        for (LogicalType type : new LogicalType[] {LogicalType.Textual, LogicalType.Enum, LogicalType.Boolean}) {
            builder.withCoercionConfig(type, config -> {
                config.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail);
                config.setCoercion(CoercionInputShape.Float, CoercionAction.Fail);
                config.setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
            });
        }
        builder.withCoercionConfig(
                LogicalType.Enum, config -> config.setCoercion(CoercionInputShape.EmptyString, CoercionAction.Fail));
        mapper = builder.build();
        exactMapper = JsonMapper.builder()
                .defaultPropertyInclusion(
                        JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.USE_DEFAULTS))
                .annotationIntrospector(new EnumSpelling())
                .build();
    }

    /** Turns records into plain values with all digits of their numbers. */
    public JsonMapper exactMapper() {
        return exactMapper;
    }

    /** An answer for which nothing was assumed does not say so. */
    interface AnswerOnTheWire {
        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        List<Assumption> assumptions();
    }

    public JsonMapper mapper() {
        return mapper;
    }

    /** The bytes of an answer. */
    public byte[] write(Object answer) throws JsonProcessingException {
        return mapper.writeValueAsBytes(answer);
    }

    private static SimpleModule written() {
        SimpleModule module = new SimpleModule("written");
        JsonSerializer<Double> rounded = JsonWriter.serializer(Double.class, Json::writeRounded);
        module.addSerializer(Double.class, rounded);
        module.addSerializer(double.class, rounded);
        module.addSerializer(PropertyValue.class, ToStringSerializer.instance);
        return module;
    }

    private static void writeRounded(Double value, JsonGenerator out, SerializerProvider provider) throws IOException {
        char[] text = new char[PlainDecimal.LONGEST];
        int start = PlainDecimal.write(value, text);
        if (start >= 0) {
            out.writeNumber(text, start, text.length - start);
            return;
        }
        double rounded = SignificantDigits.round(value);
        if (rounded == Math.rint(rounded) && Math.abs(rounded) < 1e15) {
            out.writeNumber((long) rounded);
        } else {
            out.writeNumber(rounded);
        }
    }
}

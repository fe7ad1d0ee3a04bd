package loomwright.service.input;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import loomwright.message.Argument;
import loomwright.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people send that is almost JSON is named for what it is. */
class JsonSyntaxTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
            {"a":1,}            | TRAILING_COMMA      | 8
            [1,]                | TRAILING_COMMA      | 4
            /* x */ {}          | COMMENT             | 1
            {"a":1, // note     | COMMENT             | 9
            {"a":1, # note      | COMMENT             | 9
            {"a": 1,5}          | DECIMAL_COMMA       | 9
            {'a':1}             | SINGLE_QUOTES       | 2
            {"a":'x'}           | SINGLE_QUOTES       | 6
            {“a”:1}             | CURLY_QUOTES        | 2
            {"é":„x"}           | CURLY_QUOTES        | 6
            {a:1}               | UNQUOTED_NAME       | 2
            {"a":1, b:2}        | UNQUOTED_NAME       | 9
            {"a":blue}          | UNQUOTED_TEXT       | 6
            {"a":True}          | LITERAL_IN_CAPITALS | 6
            {"a":None}          | LITERAL_IN_CAPITALS | 6
            {"a":+1}            | PLUS_SIGN           | 7
            {"a":01}            | LEADING_ZERO        | 7
            {"a":.5}            | DECIMAL_POINT       | 6
            {"a":5.}            | DECIMAL_POINT       | 8
            {"a":1 "b":2}       | MISSING_COMMA       | 8
            [{} {}]             | MISSING_COMMA       | 5
            {"a" 1}             | MISSING_COLON       | 6
            {,}                 | EXTRA_COMMA         | 2
            {"a":1;"b":2}       | SEMICOLON           | 7
            {"a":12V}           | UNIT_BEHIND_NUMBER  | 8
            {"a":4' 6"}         | UNIT_BEHIND_NUMBER  | 7
            {"a":[1,2}          | WRONG_BRACKET       | 10
            {"a":"\\x"}         | BACKSLASH           | 8
            {"a":               | CUT_SHORT           | 6
            {"a":"x             | CUT_SHORT           | 8
            {                   | BRACKET_ALONE       | 2
            [                   | BRACKET_ALONE       | 2
            name: x             | NOT_JSON            | 1
            hello               | NOT_JSON            | 1
            """)
    void isNamedWithItsColumn(String json, JsonSyntaxCode code, int column) throws IOException {
        Message fault = fault(json);
        assertThat(fault.code()).isEqualTo(code);
        assertThat(fault.arguments()).containsAllEntriesOf(place(1, column));
    }

    @Test
    void aLineBreakInATextIsNamed() throws IOException {
        assertThat(fault("{\"a\":\"x\ny\"}").code()).isEqualTo(JsonSyntaxCode.LINE_BREAK_IN_TEXT);
    }

    @Test
    void linesAreCounted() throws IOException {
        Message fault = fault("{\n  \"a\": 1,\n  \"ü\": 2,\n}");
        assertThat(fault.code()).isEqualTo(JsonSyntaxCode.TRAILING_COMMA);
        assertThat(fault.arguments()).containsAllEntriesOf(place(4, 1));
    }

    private static Map<String, Argument> place(int line, int column) {
        return Map.of("line", new Argument.Count(line), "column", new Argument.Count(column));
    }

    private static Message fault(String text) throws IOException {
        byte[] json = text.getBytes(StandardCharsets.UTF_8);
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            try {
                while (parser.nextToken() != null) {}
            } catch (JsonProcessingException thrown) {
                return JsonSyntax.fault(json, parser, thrown);
            }
        }
        throw new AssertionError("no fault in " + text);
    }
}

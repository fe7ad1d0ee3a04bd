package loomwright.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which changes of the contract break a client ({@code docs/compatibility.md}). Each is made in a copy of the contract, so
 * that the comparison is seen to find it.
 */
class ContractChangesTest {
    private static final YAMLMapper YAML = new YAMLMapper();

    /** The contract of the last release lies here from 1.0.0 on. */
    private static final Path RELEASED = Path.of("src/test/resources/released.yaml");

    private static final String SAMPLE = """
            paths:
              /v1/lamps:
                get:
                  operationId: getLamp
                  parameters:
                    - {name: watts, in: query, required: true, schema: {type: number, minimum: 1, maximum: 100}}
                    - {name: colour, in: query, schema: {$ref: '#/components/schemas/Colour'}}
                  responses:
                    '200':
                      content:
                        application/json: {schema: {$ref: '#/components/schemas/Lamp'}}
                        text/plain: {schema: {type: string}}
                post:
                  operationId: postLamp
                  requestBody:
                    required: true
                    content:
                      application/json: {schema: {$ref: '#/components/schemas/Question'}}
                  responses:
                    '200':
                      content:
                        application/json: {schema: {$ref: '#/components/schemas/Lamp'}}
            components:
              schemas:
                Colour: {type: string, enum: [white, amber]}
                Question:
                  type: object
                  additionalProperties: false
                  required: [watts]
                  properties:
                    watts: {type: number, minimum: 1}
                    volts: {type: number, default: 12}
                Lamp:
                  type: object
                  additionalProperties: true
                  required: [ohms, verdict]
                  properties:
                    ohms: {type: number}
                    verdict: {type: string, x-extensible-enum: [bright, dim]}
                    unit: {type: string, enum: [ohm]}
            """;

    private static JsonNode parsed(String contract) {
        try {
            return YAML.readTree(contract);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> brokenBy(String text, String replacement) {
        assertThat(SAMPLE).contains(text);
        return ContractChanges.broken(parsed(SAMPLE), parsed(SAMPLE.replace(text, replacement)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            /v1/lamps                          | /v1/bulbs
            operationId: getLamp               | operationId: readLamp
            name: watts, in: query             | name: power, in: query
            name: colour, in: query            | name: colour, required: true, in: query
            maximum: 100                       | maximum: 50
            enum: [white, amber]               | enum: [white]
            watts: {type: number, minimum: 1}  | watts: {type: number, minimum: 2}
            watts: {type: number, minimum: 1}  | watts: {type: string}
            volts: {type: number               | potential: {type: number
            default: 12                        | default: 6
            required: [watts]                  | required: [watts, volts]
            required: [ohms, verdict]          | required: [ohms]
            ohms: {type: number}               | ohms: {type: integer}
            ohms: {type: number}               | resistance: {type: number}
            enum: [ohm]                        | enum: [ohm, kiloohm]
            text/plain: {schema                | text/csv: {schema
            '200'                              | '201'
            """)
    void isFoundToBreakAClient(String text, String replacement) {
        assertThat(brokenBy(text, replacement)).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            maximum: 100                       | maximum: 200
            enum: [white, amber]               | enum: [white, amber, red]
            x-extensible-enum: [bright, dim]   | x-extensible-enum: [bright, dim, dark]
            ohms: {type: number}               | {ohms: {type: number}, watts: {type: number}}
            volts: {type: number, default: 12} | {volts: {type: number, default: 12}, label: {type: string}}
            watts: {type: number, minimum: 1}  | watts: {type: number, description: of the bulb}
            """)
    void isGrowthThatNoClientMinds(String text, String replacement) {
        String grown = replacement.startsWith("{")
                ? replacement.substring(1, replacement.length() - 1).replace("}, ", "}\n        ")
                : replacement;
        assertThat(brokenBy(text, grown)).isEmpty();
    }

    @Test
    void theContractBreaksNothingOfTheLastRelease() throws IOException {
        JsonNode now = parsed(Files.readString(ContractBundle.BUNDLE));
        boolean isReleased = !now.at("/info/version").asText().startsWith("0.");
        assertThat(Files.exists(RELEASED)).isEqualTo(isReleased);
        JsonNode before = isReleased ? parsed(Files.readString(RELEASED)) : now;
        assertThat(ContractChanges.broken(before, now)).isEmpty();
    }
}

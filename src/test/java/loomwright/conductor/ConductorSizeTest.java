package loomwright.conductor;

import static loomwright.message.Arg.arg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A conductor size is read as people type it, refused where it has two readings, and knows its resistance. */
class ConductorSizeTest {
    @ParameterizedTest(name = "''{0}'' is {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "14 | 14 AWG",
                "14AWG | 14 AWG",
                "14 AWG | 14 AWG",
                "AWG14 | 14 AWG",
                "awg 14 | 14 AWG",
                "#14 | 14 AWG",
                "14 ga | 14 AWG",
                "14 gauge | 14 AWG",
                "10 AWG | 10 AWG",
                "12 | 12 AWG",
                "20 | 20 AWG",
                "2/0 | 2/0 AWG",
                "00 | 2/0 AWG",
                "0 | 1/0 AWG",
                "0000AWG | 4/0 AWG",
                "AWG 2/0 | 2/0 AWG",
                "2.5mm2 | 2.5 mm2",
                "2,5 mm² | 2.5 mm2",
                "2.5 mm2 | 2.5 mm2",
                "2.50 mm^2 | 2.5 mm2",
                "2.5 sq mm | 2.5 mm2",
                "2.5 sqmm | 2.5 mm2",
                "2.5 | 2.5 mm2",
                "10 mm2 | 10 mm2",
                "IEC 2.5 mm2 | 2.5 mm2",
                "IEC 60228 2.5 mm2 | 2.5 mm2",
                "ISO 2.5 mm2 | ISO 2.5 mm2",
                "ISO 6722 3mm2 | ISO 3 mm2",
                "3 mm2 | ISO 3 mm2",
                "0.35 mm2 | ISO 0.35 mm2",
                "SAE 14 | SAE 14",
                "sae14 | SAE 14",
                "SAE 1/0 | SAE 1/0",
                "SAE 0 | SAE 1/0"
            })
    void isReadAsPeopleTypeIt(String text, String name) {
        assertThat(ConductorSize.parse(text).name()).isEqualTo(name);
    }

    @ParameterizedTest(name = "''{0}'' is refused: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "10 | MALFORMED",
                "16 | MALFORMED",
                "4 | MALFORMED",
                "6 | MALFORMED",
                "2 | MALFORMED",
                "1 | MALFORMED",
                "25 | MALFORMED",
                "2.5 mm | MALFORMED",
                "14 AWG 2.5 mm2 | MALFORMED",
                "SAE 2 mm2 | MALFORMED",
                "SAE 14 AWG | MALFORMED",
                "ISO 14 AWG | MALFORMED",
                "AWG | MALFORMED",
                "-14 | MALFORMED",
                "1.2.3 mm2 | MALFORMED",
                ". | MALFORMED",
                "1/2 mm2 | MALFORMED",
                "14 SWG | MALFORMED",
                "014 AWG | MALFORMED",
                "1.5 AWG | MALFORMED",
                "26 AWG | OUT_OF_RANGE",
                "5/0 | OUT_OF_RANGE",
                "00000 | OUT_OF_RANGE",
                "999999999999999999999999 AWG | OUT_OF_RANGE",
                "SAE 15 | NOT_ONE_OF",
                "2.6 mm2 | NOT_ONE_OF",
                "0 mm2 | NOT_ONE_OF",
                "IEC 3 mm2 | NOT_ONE_OF",
                "150 mm2 | NOT_ONE_OF"
            })
    void isRefusedWhereItHasTwoReadingsOrNone(String text, InputError.Code code) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> ConductorSize.parse(text));
        assertThat(rejected.faults()).extracting(InputError::code).containsExactly(code);
        assertThat(rejected.faults()).extracting(InputError::pointer).containsExactly("");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "14 AWG                                    "})
    void emptyAndEndlessTextsAreRefused(String text) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> ConductorSize.parse(text));
        assertThat(rejected.faults()).extracting(InputError::code).containsExactly(InputError.Code.OUT_OF_RANGE);
    }

    @Test
    void theRefusalOfABareNumberNamesBothReadings() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> ConductorSize.parse("16"));
        assertThat(rejected.faults().get(0).accepted()).isEqualTo(AcceptedSize.GAUGE_OR_AREA.with(arg("number", "16")));
    }

    @ParameterizedTest(name = "''{0}''")
    @CsvSource({"IEC 3 mm2, IEC_AREA", "ISO 7 mm2, ISO_AREA", "7.5 mm2, AREA"})
    void theRefusalOfAnAreaListsThoseOfTheStandard(String text, AcceptedSize accepted) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> ConductorSize.parse(text));
        var message = rejected.faults().get(0).accepted();
        assertThat(message.code()).isEqualTo(accepted);
        assertThat(message.toString()).contains(accepted == AcceptedSize.IEC_AREA ? "120" : "0.35");
    }

    @Test
    void aGaugeWithAStandardOfAreasIsRefused() {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> ConductorSize.parse("IEC 14 AWG"));
        assertThat(rejected.faults().get(0).accepted()).isEqualTo(AcceptedSize.ONE_STANDARD.with());
    }

    @Test
    void everyNameIsReadBackToTheSameSize() {
        for (SizeSystem system : SizeSystem.values()) {
            for (ConductorSize size : ConductorSize.list(system)) {
                assertThat(ConductorSize.parse(size.name())).isEqualTo(size);
            }
        }
    }

    @Test
    void metricWithoutAStandardIsTheVerifiedOne() {
        assertThat(ConductorSize.parse("2.5 mm2").basis().status()).isEqualTo(Basis.Status.VERIFIED);
        assertThat(ConductorSize.parse("ISO 2.5 mm2").basis().status()).isEqualTo(Basis.Status.FROM_MEMORY);
    }

    @Test
    void thickerMeansLessResistanceInEverySystem() {
        for (SizeSystem system : SizeSystem.values()) {
            List<ConductorSize> sizes = ConductorSize.list(system);
            for (int i = 1; i < sizes.size(); i++) {
                assertThat(sizes.get(i).resistanceOhmPerM20C())
                        .isLessThan(sizes.get(i - 1).resistanceOhmPerM20C());
            }
        }
    }

    /** IEC 60028: coefficient 0.00393 per K at 20 C; twice the resistance at 274.5 C. */
    @Test
    void resistanceFollowsTemperature() {
        ConductorSize size = ConductorSize.parse("14");
        assertThat(size.resistanceOhmPerM(20)).isEqualTo(size.resistanceOhmPerM20C());
        assertThat(size.resistanceOhmPerM(274.4529) / size.resistanceOhmPerM20C())
                .isCloseTo(2, within(1e-6));
    }

    @Property(seed = "14")
    void anyTextIsEitherASizeOrRefused(@ForAll("nearSizes") String text) {
        try {
            ConductorSize size = ConductorSize.parse(text);
            assertThat(ConductorSize.parse(size.name())).isEqualTo(size);
        } catch (RejectedInput e) {
            assertThat(e.faults()).hasSize(1);
        }
    }

    @Provide
    Arbitrary<String> nearSizes() {
        return Arbitraries.of(
                        Arrays.asList("1", "4", "2", "0", "/0", ".", ",", " ", "mm", "2", "²", "awg", "SAE", "ISO"))
                .list()
                .ofMaxSize(8)
                .map(parts -> String.join("", parts));
    }
}

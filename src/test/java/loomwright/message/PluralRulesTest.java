package loomwright.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.ibm.icu.util.ULocale;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plural forms of whole numbers by rules of Unicode CLDR, compared with those of ICU4J 78.1. */
class PluralRulesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en | one: i = 1 and v = 0",
                "fr | one: i = 0,1; many: e = 0 and i != 0 and i % 1000000 = 0 and v = 0 or e != 0..5",
                "pl | one: i = 1 and v = 0; few: v = 0 and i % 10 = 2..4 and i % 100 != 12..14;"
                        + " many: v = 0 and i != 1 and i % 10 = 0..1 or v = 0 and i % 10 = 5..9"
                        + " or v = 0 and i % 100 = 12..14",
                "ru | one: v = 0 and i % 10 = 1 and i % 100 != 11; few: v = 0 and i % 10 = 2..4 and i % 100 != 12..14;"
                        + " many: v = 0 and i % 10 = 0 or v = 0 and i % 10 = 5..9 or v = 0 and i % 100 = 11..14",
                "ar | zero: n = 0; one: n = 1; two: n = 2; few: n % 100 = 3..10; many: n % 100 = 11..99",
                "cy | zero: n = 0; one: n = 1; two: n = 2; few: n = 3; many: n = 6",
            })
    void theFormOfEachNumberIsThatOfIcu(String language, String rules) {
        Map<String, String> byForm = new HashMap<>();
        for (String rule : rules.split(";", -1)) {
            byForm.put(rule.split(":", -1)[0].strip(), rule.split(":", -1)[1].strip());
        }
        PluralRules ours = new PluralRules(byForm);
        com.ibm.icu.text.PluralRules icu =
                com.ibm.icu.text.PluralRules.forLocale(ULocale.forLanguageTag(language.strip()));
        for (long number : new long[] {1_000_000, 3_000_000, 1_000_001}) {
            assertThat(ours.form(number)).as(language + " " + number).isEqualTo(icu.select((double) number));
        }
        for (long number = 0; number <= 1_200; number++) {
            assertThat(ours.form(number)).as(language + " " + number).isEqualTo(icu.select((double) number));
        }
    }

    @Test
    void aLanguageWithoutRulesHasOneForm() {
        assertThat(new PluralRules(Map.of()).form(1)).isEqualTo(PluralRules.OTHER);
    }

    @Test
    void whatIsNoRuleIsRefused() {
        assertThatThrownBy(() -> new PluralRules(Map.of("one", "n is 1"))).isInstanceOf(IllegalArgumentException.class);
    }
}

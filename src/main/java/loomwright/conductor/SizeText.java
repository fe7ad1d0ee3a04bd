package loomwright.conductor;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;

/** The text of a conductor size, cut into numbers and words in one pass. */
final class SizeText {
    private static final int MAX_LENGTH = 32;
    private static final Set<String> AREA_UNITS = Set.of("mm2", "sqmm", "sq");
    private static final Set<String> GAUGE_WORDS = Set.of("awg", "ga", "gauge");
    private static final Set<String> STANDARDS = Set.of("iec", "iso", "sae");
    /** Numbers of standards that people write along: "ISO 6722 3 mm2". */
    private static final Set<String> STANDARD_NUMBERS = Set.of("60228", "6722");
    /** Metric sizes so rare, of gauges so common, that the bare number is read as the gauge. */
    private static final Set<String> CLEAR_GAUGES = Set.of("12", "20");

    private final String text;
    private final List<String> numbers = new ArrayList<>();
    private final List<String> words = new ArrayList<>();

    SizeText(String text) {
        this.text = text;
    }

    ConductorSize read() {
        if (text.isBlank() || text.length() > MAX_LENGTH) {
            throw fault(InputError.Code.OUT_OF_RANGE, "1 to " + MAX_LENGTH + " characters, as '14 AWG' or '2.5 mm2'");
        }
        cut(Normalizer.normalize(text, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT));
        long standards = words.stream().filter(STANDARDS::contains).count();
        boolean gauge = words.stream().anyMatch(GAUGE_WORDS::contains);
        boolean area = words.stream().anyMatch(AREA_UNITS::contains);
        boolean sae = words.contains("sae");
        if (words.contains("mm")) {
            throw malformed("an area in mm2: 'mm' may mean the diameter or be short for the area");
        }
        if (numbers.size() != 1 || standards > 1 || words.size() > 2 || (area && (gauge || sae))) {
            throw malformed("one number with its unit, as '14 AWG', '2/0 AWG', '2.5 mm2', 'ISO 3 mm2' or 'SAE 14'");
        }
        if (standards > 0 && (words.contains("awg") || (gauge && !sae))) {
            throw malformed("the sizes of one standard: '14 AWG', 'SAE 14' or 'ISO 3 mm2'");
        }
        String number = numbers.get(0);
        Optional<ConductorSize> strands =
                words.isEmpty() || words.equals(List.of("in")) ? StrandSizes.find(number) : Optional.empty();
        if (strands.isPresent()) {
            return strands.get();
        }
        if (sae) {
            return sae(number);
        }
        if (gauge) {
            return awg(number);
        }
        return area || standards > 0 ? metric(number) : bare(number);
    }

    /** Letters with a trailing 2 or ^2 are a word, digits with point, comma or stroke a number; blanks separate. */
    private void cut(String normal) {
        int i = normal.startsWith("#") ? 1 : 0;
        while (i < normal.length()) {
            int start = i;
            char c = normal.charAt(i);
            if (isNumberChar(c)) {
                while (i < normal.length() && isNumberChar(normal.charAt(i))) {
                    i++;
                }
                String number = normal.substring(start, i).replace(',', '.');
                if (!(STANDARD_NUMBERS.contains(number) && !words.isEmpty())) {
                    numbers.add(number);
                }
            } else if (c >= 'a' && c <= 'z') {
                while (i < normal.length() && normal.charAt(i) >= 'a' && normal.charAt(i) <= 'z') {
                    i++;
                }
                String word = normal.substring(start, i);
                if (word.endsWith("mm") && normal.startsWith("2", i)) {
                    word += "2";
                    i++;
                } else if (word.endsWith("mm") && normal.startsWith("^2", i)) {
                    word += "2";
                    i += 2;
                }
                addWord(word);
            } else if (Character.isWhitespace(c)) {
                i++;
            } else {
                throw malformed("digits, letters and blanks only, as '14 AWG', '2/0 AWG' or '2.5 mm2'");
            }
        }
    }

    private void addWord(String word) {
        boolean sq = !words.isEmpty() && words.get(words.size() - 1).equals("sq");
        if (sq && word.equals("mm")) {
            words.set(words.size() - 1, "sqmm");
        } else if (AREA_UNITS.contains(word)
                || GAUGE_WORDS.contains(word)
                || STANDARDS.contains(word)
                || word.equals("mm")
                || word.equals("in")) {
            words.add(word);
        } else {
            throw malformed("AWG, SAE, IEC, ISO or mm2 beside the number; '" + word + "' is none of them");
        }
    }

    private ConductorSize awg(String number) {
        return SizeCatalogue.find(SizeSystem.AWG, gauge(number) + " AWG")
                .orElseThrow(() -> fault(InputError.Code.OUT_OF_RANGE, "a gauge from 4/0 to 24"));
    }

    private ConductorSize sae(String number) {
        String sizes =
                SizeSystem.SAE.table().rows().stream().map(row -> row.get(0)).collect(Collectors.joining(", "));
        return SizeCatalogue.find(SizeSystem.SAE, "SAE " + gauge(number))
                .orElseThrow(() -> fault(InputError.Code.NOT_ONE_OF, "an SAE size: " + sizes));
    }

    /** 0, 00 and 2/0 in one form; leading zeros of other numbers are refused. */
    private String gauge(String number) {
        if (number.chars().allMatch(c -> c == '0')) {
            return number.length() + "/0";
        }
        boolean plain = number.charAt(0) != '0' && number.chars().allMatch(c -> c >= '0' && c <= '9');
        boolean stroke = number.length() == 3 && number.endsWith("/0") && number.charAt(0) != '0';
        if (!plain && !stroke) {
            throw malformed("a gauge is a whole number, or 1/0 to 4/0 (0 to 0000)");
        }
        return number;
    }

    private ConductorSize metric(String number) {
        boolean iso = words.contains("iso");
        Optional<ConductorSize> iec = iso ? Optional.empty() : findArea(SizeSystem.METRIC_IEC60228, number);
        Optional<ConductorSize> found =
                iec.isPresent() || words.contains("iec") ? iec : findArea(SizeSystem.METRIC_ISO6722, number);
        boolean anyStandard = words.stream().noneMatch(STANDARDS::contains);
        return found.or(() -> anyStandard ? StrandSizes.ofNominalArea(number) : Optional.empty())
                .orElseThrow(() -> fault(InputError.Code.NOT_ONE_OF, acceptedAreas()));
    }

    private String acceptedAreas() {
        String iec = "IEC 60228: " + areas(SizeSystem.METRIC_IEC60228) + " mm2";
        String iso = "ISO 6722: " + areas(SizeSystem.METRIC_ISO6722) + " mm2";
        if (words.contains("iec")) {
            return iec;
        }
        return words.contains("iso") ? iso : iec + "; " + iso;
    }

    private static String areas(SizeSystem system) {
        return system.table().rows().stream().map(row -> row.get(0)).collect(Collectors.joining(" "));
    }

    private Optional<ConductorSize> findArea(SizeSystem system, String number) {
        int point = number.indexOf('.');
        boolean decimal =
                number.indexOf('/') < 0 && point == number.lastIndexOf('.') && number.length() > (point < 0 ? 0 : 1);
        if (!decimal) {
            throw malformed("a decimal number of square millimetres, as '2.5 mm2'");
        }
        double areaMm2 = Double.parseDouble(number);
        return SizeCatalogue.list(system).stream()
                .filter(s -> s.areaMm2() == areaMm2)
                .findFirst();
    }

    private ConductorSize bare(String number) {
        if (number.indexOf('.') >= 0) {
            return metric(number);
        }
        boolean clear = number.indexOf('/') >= 0 || number.startsWith("0") || CLEAR_GAUGES.contains(number);
        if (!clear
                && (findArea(SizeSystem.METRIC_IEC60228, number).isPresent()
                        || findArea(SizeSystem.METRIC_ISO6722, number).isPresent())) {
            throw malformed(number + " AWG for the gauge, or " + number + " mm2 for the area");
        }
        return awg(number);
    }

    private static boolean isNumberChar(char c) {
        return (c >= '0' && c <= '9') || c == '.' || c == ',' || c == '/';
    }

    private RejectedInput malformed(String accepted) {
        return fault(InputError.Code.MALFORMED, accepted);
    }

    private RejectedInput fault(InputError.Code code, String accepted) {
        return new RejectedInput(new InputError(code, "", text, accepted));
    }
}

package loomwright.conductor;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Arg;
import loomwright.message.Message;

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
            throw fault(InputError.Code.OUT_OF_RANGE, AcceptedSize.LENGTH.with(arg("max", MAX_LENGTH)));
        }
        cut(Normalizer.normalize(text, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT));
        long standards = words.stream().filter(STANDARDS::contains).count();
        boolean gauge = words.stream().anyMatch(GAUGE_WORDS::contains);
        boolean area = words.stream().anyMatch(AREA_UNITS::contains);
        boolean sae = words.contains("sae");
        if (words.contains("mm")) {
            throw malformed(AcceptedSize.AREA_NOT_DIAMETER.with());
        }
        if (numbers.size() != 1 || standards > 1 || words.size() > 2 || (area && (gauge || sae))) {
            throw malformed(AcceptedSize.NUMBER_WITH_UNIT.with());
        }
        if (standards > 0 && (words.contains("awg") || (gauge && !sae))) {
            throw malformed(AcceptedSize.ONE_STANDARD.with());
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
                throw malformed(AcceptedSize.PLAIN_CHARACTERS.with());
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
            throw malformed(AcceptedSize.KNOWN_UNIT.with(arg("word", word)));
        }
    }

    private ConductorSize awg(String number) {
        return SizeCatalogue.find(SizeSystem.AWG, gauge(number) + " AWG")
                .orElseThrow(() -> fault(InputError.Code.OUT_OF_RANGE, AcceptedSize.GAUGE.with()));
    }

    private ConductorSize sae(String number) {
        List<String> sizes =
                SizeSystem.SAE.table().rows().stream().map(row -> row.get(0)).toList();
        return SizeCatalogue.find(SizeSystem.SAE, "SAE " + gauge(number))
                .orElseThrow(
                        () -> fault(InputError.Code.NOT_ONE_OF, AcceptedSize.SAE_SIZE.with(texts("sizes", sizes))));
    }

    /** 0, 00 and 2/0 in one form; leading zeros of other numbers are refused. */
    private String gauge(String number) {
        if (number.chars().allMatch(c -> c == '0')) {
            return number.length() + "/0";
        }
        boolean plain = number.charAt(0) != '0' && number.chars().allMatch(c -> c >= '0' && c <= '9');
        boolean stroke = number.length() == 3 && number.endsWith("/0") && number.charAt(0) != '0';
        if (!plain && !stroke) {
            throw malformed(AcceptedSize.GAUGE_NUMBER.with());
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

    private Message acceptedAreas() {
        Arg iec = arg("iec", areas(SizeSystem.METRIC_IEC60228));
        Arg iso = arg("iso", areas(SizeSystem.METRIC_ISO6722));
        if (words.contains("iec")) {
            return AcceptedSize.IEC_AREA.with(iec);
        }
        return words.contains("iso") ? AcceptedSize.ISO_AREA.with(iso) : AcceptedSize.AREA.with(iec, iso);
    }

    private static String areas(SizeSystem system) {
        return system.table().rows().stream().map(row -> row.get(0)).collect(Collectors.joining(" "));
    }

    private Optional<ConductorSize> findArea(SizeSystem system, String number) {
        int point = number.indexOf('.');
        boolean decimal =
                number.indexOf('/') < 0 && point == number.lastIndexOf('.') && number.length() > (point < 0 ? 0 : 1);
        if (!decimal) {
            throw malformed(AcceptedSize.DECIMAL_AREA.with());
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
            throw malformed(AcceptedSize.GAUGE_OR_AREA.with(arg("number", number)));
        }
        return awg(number);
    }

    private static boolean isNumberChar(char c) {
        return (c >= '0' && c <= '9') || c == '.' || c == ',' || c == '/';
    }

    private RejectedInput malformed(Message accepted) {
        return fault(InputError.Code.MALFORMED, accepted);
    }

    private RejectedInput fault(InputError.Code code, Message accepted) {
        return new RejectedInput(new InputError(code, "", text, accepted));
    }
}

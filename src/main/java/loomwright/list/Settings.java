package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.list.ListAssumption.Code;
import org.jspecify.annotations.Nullable;

/** What the whole list shares: name, voltage, earth, temperatures, supplies, how colours are written. */
final class Settings {
    private static final Pattern VOLTAGE =
            Pattern.compile("\\b(6|12|24)\\s*-?\\s*v(?:olts?)?\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern POSITIVE = Pattern.compile(
            "(positive|\\+|\\+ve|pos)[ -]*(earth|ground)|(earth|ground)(ed)?[ -]*(is )?(positive|\\+)",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern NEGATIVE = Pattern.compile(
            "(negative|-|-ve|neg)[ -]*(earth|ground)|(earth|ground)(ed)?[ -]*(is )?negative", Pattern.CASE_INSENSITIVE);
    private static final int MAX_NAME = 200;
    private static final Pattern SENTENCE = Pattern.compile("[.:?!]\\s*$|[.?!]\\s+\\S");

    private final Map<String, TableRow> rows = new LinkedHashMap<>();
    private final List<String> sentences;
    private final Notes notes;
    private double nominalV = 12;
    private boolean positiveEarth;
    private boolean british;
    private boolean exact;

    private Settings(List<String> sentences, Notes notes) {
        this.sentences = sentences;
        this.notes = notes;
    }

    static Settings of(ListTables tables, Notes notes) {
        Settings settings = new Settings(tables.sentences(), notes);
        tables.rows(TableKind.SETTINGS).forEach(row -> settings.rows.put(Columns.plain(row.text("setting")), row));
        settings.exact = settings.is("assumptions", "off", "none", "no");
        settings.british = settings.text("colours", "colors", "colour letters")
                .toUpperCase(Locale.ROOT)
                .contains("BS");
        settings.readVoltage();
        settings.readEarth();
        return settings;
    }

    double nominalV() {
        return nominalV;
    }

    boolean positiveEarth() {
        return positiveEarth;
    }

    /** Whether letters of colours are those of BS AU 7. */
    boolean british() {
        return british;
    }

    /** Whether the list is complete, so that nothing may be filled in. */
    boolean exact() {
        return exact;
    }

    /** Whether an engine has a strap to the body, if no wire says so. */
    boolean hasEarthStrap() {
        return !exact && !saysNoStrap();
    }

    /** Whether the owner says that no strap joins engine and body. */
    boolean saysNoStrap() {
        return is("engine strap", "none", "no", "missing", "off");
    }

    /** The setting of the engine strap where no engine stands alone, so that it decides nothing; in words. */
    void noteUnusedStrap(boolean engineNamed) {
        TableRow row = find("engine strap");
        if (row != null && saysNoStrap()) {
            notes.assume(
                    engineNamed ? Code.STRAP_CONTRADICTED : Code.STRAP_WITHOUT_ENGINE,
                    row.at("value"),
                    List.of(),
                    null,
                    Map.of("value", row.text("value")));
        }
    }

    /** {@code system} of the plan document. */
    Map<String, Object> system() {
        Map<String, Object> system = new LinkedHashMap<>();
        system.put("nominalVoltageV", nominalV);
        system.put("earthPolarity", positiveEarth ? "positive" : "negative");
        putNumber(system, "ambientTemperatureC", "ambient temperature", "temperature", "ambient");
        putNumber(system, "engineBayTemperatureC", "engine bay temperature", "engine temperature");
        return system;
    }

    String name() {
        String named = text("name", "car", "vehicle");
        if (!named.isEmpty()) {
            return named;
        }
        // What ends or goes on like a sentence is no title.
        return sentences.isEmpty() || SENTENCE.matcher(sentences.get(0)).find()
                ? "Plan from a list"
                : shortened(withoutSupply(sentences.get(0)));
    }

    /** A title without the voltage and the earth, which stand beside it wherever it is shown. */
    private static String withoutSupply(String title) {
        String bare = VOLTAGE.matcher(
                        NEGATIVE.matcher(POSITIVE.matcher(title).replaceAll("")).replaceAll(""))
                .replaceAll("");
        String clean =
                bare.replaceAll("(\\s*[,;]\\s*)+", ", ").replaceAll("\\s+", " ").replaceAll("^[, ]+|[, ]+$", "");
        return clean.isEmpty() ? title : clean;
    }

    private static String shortened(String text) {
        return text.codePointCount(0, text.length()) <= MAX_NAME
                ? text
                : text.substring(0, text.offsetByCodePoints(0, MAX_NAME));
    }

    private void readVoltage() {
        TableRow row = find("voltage", "system", "system voltage", "volts");
        if (row != null) {
            String written = row.text("value");
            OptionalDouble volts = Quantities.number(written);
            OptionalDouble found =
                    volts.isPresent() ? volts : Quantities.values(written).in("V");
            if (found.isPresent()
                    && (found.getAsDouble() == 6 || found.getAsDouble() == 12 || found.getAsDouble() == 24)) {
                nominalV = found.getAsDouble();
            } else {
                notes.ask(
                        Question.Code.SETTING,
                        row.at("value"),
                        List.of(),
                        written,
                        List.of("12 V", "6 V", "24 V"),
                        Map.of("setting", "voltage"));
            }
            return;
        }
        for (String sentence : sentences) {
            Matcher volts = VOLTAGE.matcher(sentence);
            if (volts.find()) {
                nominalV = Double.parseDouble(volts.group(1));
                return;
            }
        }
        notes.assume(Code.VOLTAGE, new CellRef("", 0, "voltage"), List.of(), Notes.PRACTICE, Map.of("value", "12 V"));
    }

    private void readEarth() {
        TableRow row = find("earth", "ground", "polarity", "earth polarity");
        if (row != null) {
            String written = Columns.plain(row.text("value"));
            if (written.startsWith("pos") || written.equals("+")) {
                positiveEarth = true;
            } else if (!written.startsWith("neg") && !written.equals("-")) {
                notes.ask(
                        Question.Code.SETTING,
                        row.at("value"),
                        List.of(),
                        written,
                        List.of("negative", "positive"),
                        Map.of("setting", "earth"));
            }
            return;
        }
        for (String sentence : sentences) {
            if (POSITIVE.matcher(sentence).find()) {
                positiveEarth = true;
                return;
            }
            if (NEGATIVE.matcher(sentence).find()) {
                return;
            }
        }
        notes.assume(
                Code.EARTH_POLARITY,
                new CellRef("", 0, "earth"),
                List.of(),
                Notes.PRACTICE,
                Map.of("value", "negative"));
    }

    private void putNumber(Map<String, Object> object, String property, String... names) {
        TableRow row = find(names);
        if (row != null) {
            OptionalDouble number = Quantities.number(row.text("value").replaceAll("\\s*°?\\s*[cC]$", ""));
            if (number.isPresent()) {
                object.put(property, number.getAsDouble());
            } else {
                notes.ask(
                        Question.Code.SETTING,
                        row.at("value"),
                        List.of(),
                        row.text("value"),
                        List.of("20"),
                        Map.of("setting", row.text("setting")));
            }
        }
    }

    private boolean is(String name, String... values) {
        return List.of(values).contains(Columns.plain(text(name)));
    }

    private String text(String... names) {
        TableRow row = find(names);
        return row == null ? "" : row.text("value");
    }

    private @Nullable TableRow find(String... names) {
        for (String name : names) {
            TableRow row = rows.get(name);
            if (row != null) {
                return row;
            }
        }
        return null;
    }

    /** {@code conditions} of the plan document; empty if the list has none. */
    static Map<String, Object> conditions(ListTables tables, Notes notes) {
        Map<String, Object> conditions = new LinkedHashMap<>();
        for (TableRow row : tables.rows(TableKind.CONDITIONS)) {
            Map<String, Object> supply = new LinkedHashMap<>();
            List<String[]> columns = new ArrayList<>();
            columns.add(new String[] {"volts", "emfV"});
            columns.add(new String[] {"inside resistance", "internalResistanceOhm"});
            columns.add(new String[] {"tolerance", "tolerancePercent"});
            for (String[] column : columns) {
                row.find(column[0]).ifPresent(cell -> {
                    OptionalDouble number = Quantities.number(cell.text().replaceAll("[^0-9.,+-]+$", ""));
                    if (number.isPresent()) {
                        supply.put(column[1], number.getAsDouble());
                    } else {
                        notes.ask(
                                Question.Code.SETTING,
                                row.at(column[0]),
                                List.of(),
                                cell.text(),
                                List.of(),
                                Map.of("setting", column[0]));
                    }
                });
            }
            WorksWhen.condition(row.text("condition")).ifPresent(condition -> conditions.put(condition, supply));
        }
        return conditions;
    }
}

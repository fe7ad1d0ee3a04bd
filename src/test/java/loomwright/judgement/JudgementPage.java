package loomwright.judgement;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Basis;

/**
 * Makes docs/judgement.md from the code: every basis of the packages of {@code judgement}, and from which packages its class
 * is asked. {@code main} writes it.
 */
final class JudgementPage {
    static final Path FILE = Path.of("docs", "judgement.md");

    private static final String JUDGEMENT = "loomwright.judgement";

    /** What callers ask that reaches a package or a class. */
    private static final Map<String, List<String>> OPERATIONS = operations();

    private JudgementPage() {}

    private static Map<String, List<String>> operations() {
        Map<String, List<String>> operations = new LinkedHashMap<>();
        operations.put(
                "loomwright.sizing", List.of("/v1/circuit", "/v1/conductor-size", "/v1/fuse", "/v1/voltage-drop"));
        operations.put("loomwright.ignition.ballast", List.of("/v1/ballast", "/v1/ballast-choice"));
        operations.put("loomwright.ignition.change", List.of("/v1/ignition-change"));
        operations.put("loomwright.ignition", List.of("/v1/ballast", "/v1/spark", "/v1/ignition-change"));
        operations.put("loomwright.workshop.CoilChoice", List.of("/v1/coil-choice"));
        operations.put("loomwright.workshop.CrankingTest", List.of("/v1/cranking-test"));
        operations.put("loomwright.workshop.SeriesResistor", List.of("/v1/resistor"));
        operations.put("loomwright.review", List.of("/v1/plans/review", "/v1/plans/comparison"));
        operations.put("loomwright.backfeed", List.of("/v1/plans/backfeed", "/v1/plans/review"));
        operations.put("loomwright.mistakes", List.of("/v1/plans/mistakes"));
        operations.put("loomwright.diagnosis", List.of("/v1/plans/diagnosis"));
        operations.put("loomwright.readings", List.of("/v1/plans/readings"));
        operations.put("loomwright.operation", List.of("/v1/plans/solution", "/v1/plans/review", "/v1/plans/backfeed"));
        return operations;
    }

    public static void main(String[] args) throws IOException {
        Files.writeString(FILE, text());
    }

    static String text() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("loomwright");
        List<String> lines = new ArrayList<>(List.of(
                "# How right numbers are judged",
                "",
                "This page is made from the code that judges. Don't edit it. Each rule stands in one class, and every",
                "operation that can answer asks that class.",
                "",
                "A judged figure is held to its limit: up to the limit it fits, up to 1.1 times it is a note, above that a",
                "warning, and a danger above the figure that the rule names. Within a tenth of a limit it is borderline.",
                "",
                "Status: *verified* was compared with the source or a reprint of it, *computed* follows from a law, *from",
                "memory* is to be looked up, *common practice* is a rule of the trade without a source.",
                ""));
        for (JavaClass each : classes.stream()
                .filter(c -> c.getPackageName().startsWith(JUDGEMENT) && !c.isAnonymousClass())
                .sorted((a, b) -> a.getName().compareTo(b.getName()))
                .toList()) {
            List<Basis> bases = bases(each.reflect());
            if (!bases.isEmpty()) {
                lines.add("## " + title(each.getSimpleName()));
                lines.add("");
                Set<String> asked = asked(each);
                lines.add("Asked by: "
                        + (asked.isEmpty()
                                ? "nothing yet"
                                : asked.stream().map(o -> "`" + o + "`").collect(Collectors.joining(", ")))
                        + ".");
                lines.add("");
                lines.add("| rule | source | status |");
                lines.add("|---|---|---|");
                bases.forEach(b -> lines.add("| " + cell(b.rule()) + " | " + cell(b.source()) + " | "
                        + b.status().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ') + " |"));
                lines.add("");
            }
        }
        lines.remove(lines.size() - 1);
        return String.join("\n", lines) + "\n";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }

    /** {@code FuseRule} as "Fuse rule". */
    private static String title(String name) {
        String spaced = name.replaceAll("(?<=[a-z])(?=[A-Z])", " ");
        return spaced.charAt(0) + spaced.substring(1).toLowerCase(java.util.Locale.ROOT);
    }

    private static List<Basis> bases(Class<?> type) {
        Set<Basis> bases = new LinkedHashSet<>();
        Arrays.stream(type.getDeclaredFields())
                .filter(field -> field.getType() == Basis.class && Modifier.isStatic(field.getModifiers()))
                .map(field -> read(field, null))
                .forEach(bases::add);
        Object[] constants = type.getEnumConstants();
        if (constants != null) {
            for (Object constant : constants) {
                Arrays.stream(type.getDeclaredFields())
                        .filter(field -> field.getType() == Basis.class && !Modifier.isStatic(field.getModifiers()))
                        .map(field -> read(field, constant))
                        .forEach(bases::add);
            }
        }
        return List.copyOf(bases);
    }

    private static Basis read(Field field, @org.jspecify.annotations.Nullable Object owner) {
        try {
            field.setAccessible(true);
            return (Basis) field.get(owner);
        } catch (IllegalAccessException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** Through other classes of judgement too: who asks them asks this. */
    private static Set<String> asked(JavaClass rule) {
        Set<JavaClass> known = new LinkedHashSet<>();
        List<JavaClass> open = new ArrayList<>(List.of(rule));
        Set<String> asked = new TreeSet<>();
        while (!open.isEmpty()) {
            JavaClass next = open.remove(open.size() - 1);
            if (known.add(next)) {
                for (JavaClass user : next.getDirectDependenciesToSelf().stream()
                        .map(Dependency::getOriginClass)
                        .collect(Collectors.toSet())) {
                    if (user.getPackageName().startsWith(JUDGEMENT)) {
                        if (!user.equals(next)) {
                            open.add(user);
                        }
                    } else {
                        operationsOf(user.getName().replaceFirst("\\$.*", "")).forEach(asked::add);
                    }
                }
            }
        }
        return asked;
    }

    /** By the name of a class. */
    private static Stream<String> operationsOf(String name) {
        return OPERATIONS.entrySet().stream()
                .filter(entry -> name.equals(entry.getKey()) || name.startsWith(entry.getKey() + "."))
                .limit(1)
                .flatMap(entry -> entry.getValue().stream());
    }
}

package loomwright;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Imports run one way, by a white list. */
@AnalyzeClasses(packages = "loomwright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String MESSAGE = "loomwright.message";
    private static final String ANSWER = "loomwright.answer";
    private static final String NETWORK = "loomwright.network";
    private static final String EXPRESSION = "loomwright.expression";
    private static final String CIRCUIT = "loomwright.circuit";
    private static final String CATALOGUE = "loomwright.catalogue";
    private static final String LIST = "loomwright.list";
    private static final String CONDUCTOR = "loomwright.conductor";
    private static final String JUDGEMENT = "loomwright.judgement";
    private static final String SIZING = "loomwright.sizing";
    private static final String WORKSHOP = "loomwright.workshop";
    private static final String OPERATION = "loomwright.operation";
    private static final String IGNITION = "loomwright.ignition";
    private static final String BACKFEED = "loomwright.backfeed";
    private static final String REVIEW = "loomwright.review";
    private static final String COMPARISON = "loomwright.comparison";
    private static final String DIAGNOSIS = "loomwright.diagnosis";
    private static final String MISTAKES = "loomwright.mistakes";
    private static final String READINGS = "loomwright.readings";
    private static final String DRAWING = "loomwright.drawing";
    private static final String BULK = "loomwright.bulk";
    private static final String SERVICE = "loomwright.service";

    /** What every package may use; the annotations of Jackson say how a record looks as JSON. */
    private static final List<String> EVERYWHERE = List.of(
            "java..", "org.jspecify.annotations..", "com.fasterxml.jackson.annotation..", "loomwright.message..");

    /** Each package with what it may use besides itself, the JDK and the null annotations. */
    private static final Map<String, List<String>> WHITE_LIST = Map.ofEntries(
            entry(MESSAGE, List.of()),
            entry(ANSWER, List.of()),
            entry(NETWORK, List.of(ANSWER)),
            entry(EXPRESSION, List.of(NETWORK, ANSWER)),
            entry(CIRCUIT, List.of(ANSWER)),
            entry(CONDUCTOR, List.of(ANSWER)),
            entry(CATALOGUE, List.of(CIRCUIT, CONDUCTOR, ANSWER)),
            entry(
                    LIST,
                    List.of(
                            "de.siegmar.fastcsv..",
                            "org.dhatim.fastexcel..",
                            "com.github.miachm.sods..",
                            "org.apache.commons.text..",
                            "org.apache.commons.compress..",
                            CATALOGUE,
                            CIRCUIT,
                            CONDUCTOR,
                            ANSWER)),
            entry(JUDGEMENT, List.of(CIRCUIT, CONDUCTOR, ANSWER)),
            entry(SIZING, List.of(CIRCUIT, CONDUCTOR, JUDGEMENT, ANSWER)),
            entry(OPERATION, List.of(CIRCUIT, NETWORK, CONDUCTOR, JUDGEMENT, ANSWER)),
            entry(IGNITION, List.of(CIRCUIT, NETWORK, CONDUCTOR, JUDGEMENT, OPERATION, ANSWER)),
            entry(WORKSHOP, List.of(CIRCUIT, CONDUCTOR, JUDGEMENT, IGNITION, ANSWER)),
            entry(BACKFEED, List.of(CIRCUIT, NETWORK, JUDGEMENT, OPERATION, ANSWER)),
            entry(
                    REVIEW,
                    List.of(CIRCUIT, NETWORK, CONDUCTOR, JUDGEMENT, SIZING, OPERATION, IGNITION, BACKFEED, ANSWER)),
            entry(COMPARISON, List.of(CIRCUIT, NETWORK, JUDGEMENT, OPERATION, BACKFEED, REVIEW, ANSWER)),
            entry(MISTAKES, List.of(CIRCUIT, NETWORK, CONDUCTOR, JUDGEMENT, OPERATION, ANSWER)),
            entry(DIAGNOSIS, List.of(CIRCUIT, NETWORK, JUDGEMENT, OPERATION, MISTAKES, ANSWER)),
            entry(READINGS, List.of(CIRCUIT, NETWORK, JUDGEMENT, OPERATION, ANSWER)),
            entry(
                    DRAWING,
                    List.of(
                            "javax.xml.stream..",
                            "javax.imageio..",
                            "com.github.weisj.jsvg..",
                            "org.eclipse.elk..",
                            "org.eclipse.emf..",
                            CIRCUIT,
                            NETWORK,
                            CONDUCTOR,
                            JUDGEMENT,
                            SIZING,
                            OPERATION,
                            IGNITION,
                            BACKFEED,
                            REVIEW,
                            COMPARISON,
                            DIAGNOSIS,
                            MISTAKES,
                            READINGS,
                            ANSWER)),
            entry(BULK, List.of(ANSWER)));

    @ArchTest
    static void eachPackageUsesOnlyWhatIsListed(JavaClasses all) {
        WHITE_LIST.forEach((name, used) -> {
            List<String> allowed = new ArrayList<>(EVERYWHERE);
            allowed.add(name + "..");
            used.forEach(other -> allowed.add(other.endsWith("..") ? other : other + ".."));
            classes()
                    .that()
                    .resideInAPackage(name + "..")
                    .should()
                    .onlyDependOnClassesThat(resideInAnyPackage(allowed.toArray(String[]::new)))
                    .allowEmptyShould(true)
                    .check(all);
        });
    }

    @ArchTest
    static void everyPackageIsListed(JavaClasses all) {
        List<String> listed =
                Stream.concat(WHITE_LIST.keySet().stream(), Stream.of(SERVICE)).toList();
        assertThat(all.stream()
                        .map(type -> type.getPackageName())
                        .filter(name -> !name.equals("loomwright"))
                        .filter(name -> listed.stream().noneMatch(p -> name.equals(p) || name.startsWith(p + ".")))
                        .distinct())
                .as("packages without a line in the white list")
                .isEmpty();
    }

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("loomwright.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_CYCLES_WITHIN_THE_SERVICE = slices().matching("loomwright.service.(*)..")
            .should()
            .beFreeOfCycles()
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule NO_CYCLES_WITHIN_THE_REVIEW =
            slices().matching("loomwright.review.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule ONLY_THE_SERVICE_SEES_SERVER_BINDING_AND_VALIDATOR = noClasses()
            .that()
            .resideOutsideOfPackage("loomwright.service..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "io.javalin..", "org.eclipse.jetty..", "com.fasterxml.jackson.databind..", "com.networknt..");

    @ArchTest
    static final ArchRule THE_START_CLASS_ALONE_READS_OPTIONS = noClasses()
            .that()
            .resideOutsideOfPackage("loomwright")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..");
}

package loomwright;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** What is made of more than ten values is made of smaller records with names of their own: nobody counts positions. */
class BuiltByNameTest {
    private static final int MOST = 10;

    @Test
    void nothingIsMadeOfMoreThanTenValuesByPosition() throws IOException {
        assertThat(longOnes(sources())).isEmpty();
    }

    @Test
    void aConstructorWithElevenArgumentsIsFound() throws IOException {
        String source = "class A { Object a = new B(1, 2, 3, 4, 5, 6, 7, 8, 9, f(10, 10), 11); Object b = new C(1); }";
        JavaFileObject file = new SimpleJavaFileObject(URI.create("string:///A.java"), JavaFileObject.Kind.SOURCE) {
            @Override
            public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                return source;
            }
        };
        assertThat(longOnes(List.of(file))).containsExactly("A.java: new B with 11");
    }

    private static List<JavaFileObject> sources() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"));
                StandardJavaFileManager manager = compiler().getStandardFileManager(null, null, null)) {
            List<JavaFileObject> sources = new ArrayList<>();
            manager.getJavaFileObjectsFromPaths(
                            files.filter(file -> file.toString().endsWith(".java"))
                                    .toList())
                    .forEach(sources::add);
            assertThat(sources).hasSizeGreaterThan(500);
            return sources;
        }
    }

    private static List<String> longOnes(List<JavaFileObject> sources) throws IOException {
        List<String> found = new ArrayList<>();
        JavacTask task = (JavacTask) compiler().getTask(null, null, null, List.of("-proc:none"), null, sources);
        for (CompilationUnitTree unit : task.parse()) {
            String file = Path.of(unit.getSourceFile().getName()).getFileName().toString();
            new TreeScanner<Void, Void>() {
                @Override
                public Void visitNewClass(NewClassTree made, Void nothing) {
                    int values = made.getArguments().size();
                    if (values > MOST) {
                        found.add(file + ": new " + made.getIdentifier() + " with " + values);
                    }
                    return super.visitNewClass(made, null);
                }
            }.scan(unit, null);
        }
        return found;
    }

    private static JavaCompiler compiler() {
        return ToolProvider.getSystemJavaCompiler();
    }
}

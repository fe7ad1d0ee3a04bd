package loomwright;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A class of the tests or of the service in a Java of its own, with options of its own. */
public final class OtherJava {
    private OtherJava() {}

    /**
     * One that can be started.
     *
     * @param options of the Java machine, such as the size of its heap
     */
    public static ProcessBuilder of(List<String> options, Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectErrorStream(true);
    }

    /**
     * What one said until it ended.
     *
     * @throws IllegalStateException if it did not end well; the message holds what it said
     */
    public static String said(ProcessBuilder builder) throws IOException, InterruptedException {
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(said);
        }
        return said;
    }
}

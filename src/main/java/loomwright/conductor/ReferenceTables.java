package loomwright.conductor;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All published tables, read from resources and checked when this class is first used; a broken table stops the start.
 */
public final class ReferenceTables {
    private static final List<String> NAMES = List.of(
            "awg",
            "iec60228-class5",
            "iso6722",
            "sae-cable",
            "strands",
            "us-33cfr183-ampacity",
            "us-33cfr183-engine-space",
            "us-33cfr183-bundle",
            "ac43-ampacity",
            "ac43-drop",
            "blade-fuse-limits",
            "blade-fuse-ratings",
            "glass-fuse-limits",
            "bolt-down-fuse-limits",
            "colours",
            "terminals");
    private static final Map<String, ReferenceTable> TABLES = readAll();

    private ReferenceTables() {}

    /** All tables in a fixed order. */
    public static List<ReferenceTable> list() {
        return List.copyOf(TABLES.values());
    }

    /** The table of that name. */
    public static Optional<ReferenceTable> find(String name) {
        return Optional.ofNullable(TABLES.get(name));
    }

    /** The table of that name, which must be one of ours. */
    public static ReferenceTable get(String name) {
        return find(name).orElseThrow(() -> new IllegalArgumentException("no table " + name));
    }

    private static Map<String, ReferenceTable> readAll() {
        Map<String, ReferenceTable> tables = new LinkedHashMap<>();
        for (String name : NAMES) {
            tables.put(name, read(name));
        }
        return tables;
    }

    private static ReferenceTable read(String name) {
        return load("/tables/" + name + ".csv", name);
    }

    /**
     * Reads a table file of the service that is not one of the published tables, by the same rules.
     *
     * @param path its resource, from the root of the class path
     * @param name what to call it
     */
    public static ReferenceTable load(String path, String name) {
        try (InputStream in = ReferenceTables.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException("table file " + path + " is missing");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            return TableFile.parse(name, reader.lines().toList());
        } catch (IOException e) {
            throw new UncheckedIOException("table file " + path, e);
        }
    }
}

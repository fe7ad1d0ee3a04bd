package loomwright.distribution;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The libraries in the jar, from the list that the build makes of them (CycloneDX, META-INF/sbom/bom.json). {@code main} writes
 * docs/third-party.md, after {@code mvn process-classes}.
 */
final class ThirdParties {
    static final Path PAGE = Path.of("docs", "third-party.md");
    static final Path LICENCES = Path.of("docs", "licences");

    /** Licences that a library may have; where it offers several, the first of these holds. */
    static final List<String> ACCEPTED =
            List.of("Apache-2.0", "MIT", "BSD-2-Clause", "BSD-3-Clause", "Unlicense", "CC0-1.0", "EPL-2.0", "EPL-1.0");

    /** Where the name in a library's pom misleads the list: its address is that of another licence. */
    private static final Map<String, String> BY_ADDRESS = Map.of("org.jline", "BSD-3-Clause");

    private ThirdParties() {}

    /**
     * One library.
     *
     * @param offered SPDX names of its licences
     * @param source where its source is to be had
     */
    record Library(String name, String version, List<String> offered, String source) {
        /** The licence under which it is taken, empty if none is accepted. */
        String taken() {
            return ACCEPTED.stream().filter(offered::contains).findFirst().orElse("");
        }

        private String row() {
            return "| `" + name + "` | " + version + " | [" + taken() + "](licences/" + taken() + ".txt) | <" + source
                    + "> |\n";
        }
    }

    static List<Library> inTheJar() throws IOException {
        List<Library> libraries = new ArrayList<>();
        try (InputStream list = Objects.requireNonNull(
                ThirdParties.class.getResourceAsStream("/META-INF/sbom/bom.json"), "made by mvn process-classes")) {
            for (JsonNode component : new JsonMapper().readTree(list).path("components")) {
                libraries.add(library(component));
            }
        }
        libraries.sort(Comparator.comparing(Library::name));
        return libraries;
    }

    private static Library library(JsonNode component) {
        String group = component.path("group").asText();
        List<String> offered = new ArrayList<>();
        for (JsonNode licence : component.path("licenses")) {
            offered.add(licence.at("/license/id").asText());
        }
        if (BY_ADDRESS.containsKey(group)) {
            offered = List.of(Objects.requireNonNull(BY_ADDRESS.get(group)));
        }
        return new Library(
                group + ":" + component.path("name").asText(),
                component.path("version").asText(),
                List.copyOf(offered),
                source(component));
    }

    private static String source(JsonNode component) {
        String website = "";
        for (JsonNode reference : component.path("externalReferences")) {
            String address = reference.path("url").asText();
            if (reference.path("type").asText().equals("vcs")) {
                return address.replaceFirst("^scm:git:git://", "https://");
            }
            if (reference.path("type").asText().equals("website")) {
                website = address;
            }
        }
        return website;
    }

    static String page() throws IOException {
        StringBuilder page = new StringBuilder("""
                # Libraries of others in the jar

                Loomwright itself is under the [Apache License 2.0](licences/Apache-2.0.txt). Its jar holds the libraries below, unchanged;
                some only in part. Each stands with the licence under which it is taken and the place where its source is to be had.
                Licences, notices of the authors and the list in CycloneDX form lie in the jar too (`META-INF/licences`,
                `META-INF/LICENSE`, `META-INF/NOTICE`, `META-INF/sbom/bom.json`).

                | library | version | licence | source |
                | --- | --- | --- | --- |
                """);
        for (Library library : inTheJar()) {
            page.append(library.row());
        }
        return page.toString();
    }

    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, page());
    }
}

package loomwright.service.http;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Content negotiation by the {@code Accept} header (RFC 9110, section 12.5.1). */
public final class Accept {
    private Accept() {}

    /** The form of every problem. Some generated clients name nothing but this where an answer is no JSON. */
    private static final String PROBLEM = "application/problem+json";

    /**
     * The most wanted of what is there. A header that names the form of problems alone wishes for no form of an answer: any
     * will do.
     *
     * @param header the header; absent means anything
     * @param available media types, the preferred one first
     * @return empty if none is acceptable
     */
    public static Optional<String> choose(@Nullable String header, Collection<String> available) {
        if (header == null || header.isBlank() || header.equals("*/*") || header.equalsIgnoreCase(PROBLEM)) {
            return available.stream().findFirst();
        }
        String[] ranges = header.toLowerCase(Locale.ROOT).split(",", 100);
        String best = null;
        double bestQuality = 0;
        for (String mediaType : available) {
            double quality = quality(ranges, mediaType);
            if (quality > bestQuality) {
                best = mediaType;
                bestQuality = quality;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The weight that the most specific matching range gives; 0 if none matches. */
    private static double quality(String[] ranges, String mediaType) {
        String anySubtype = mediaType.substring(0, mediaType.indexOf('/')) + "/*";
        int specificity = 0;
        double quality = 0;
        for (String range : ranges) {
            String[] parts = range.split(";", -1);
            String name = parts[0].trim();
            int matches = name.equals(mediaType) ? 3 : name.equals(anySubtype) ? 2 : name.equals("*/*") ? 1 : 0;
            if (matches > specificity) {
                specificity = matches;
                quality = weight(parts);
            }
        }
        return quality;
    }

    private static double weight(String[] parts) {
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].trim();
            if (parameter.matches("q=[01](\\.\\d{0,3})?")) {
                return Double.parseDouble(parameter.substring(2));
            }
        }
        return 1;
    }
}

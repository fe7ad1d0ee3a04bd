package loomwright.service.entrance;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/** The keys of those who may ask, each with the name of its holder. Keeps digests, not the keys. */
public final class ApiKeys {
    /** Nobody needs a key. */
    public static final ApiKeys NONE = new ApiKeys(List.of());

    private static final Pattern LINE = Pattern.compile("([A-Za-z0-9._-]{1,64})[ \\t]+([\\x21-\\x7e]{16,200})");

    private final List<Holder> holders;

    private record Holder(String name, Digest digest) {}

    /** SHA-256 of a key: of equal length for all, so that comparing tells nothing of it. */
    private static final class Digest {
        private final byte[] bytes;

        Digest(String key) {
            try {
                bytes = MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.UTF_8));
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java has SHA-256", e);
            }
        }

        boolean isThatOf(Digest other) {
            return MessageDigest.isEqual(bytes, other.bytes);
        }
    }

    private ApiKeys(List<Holder> holders) {
        this.holders = List.copyOf(holders);
    }

    /**
     * Keys of a file in UTF-8: on each line a name, blanks, and a key of 16 to 200 printable characters; empty lines and
     * those that begin with {@code #} are passed over.
     *
     * @throws loomwright.answer.RejectedInput for a line that is none, a name or key that is there twice, or no key at all
     */
    public static ApiKeys read(Path file) throws IOException {
        return of(Files.readAllLines(file));
    }

    static ApiKeys of(List<String> lines) {
        InputErrors faults = new InputErrors();
        List<Holder> holders = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String place = "/" + (i + 1);
            Matcher parts = LINE.matcher(line);
            // The value is a secret, so no fault tells it.
            if (!parts.matches()) {
                faults.add(new InputError(InputError.Code.MALFORMED, place, null, AcceptedKey.LINE.with()));
                continue;
            }
            Holder holder = new Holder(parts.group(1), new Digest(parts.group(2)));
            if (holders.stream()
                    .anyMatch(h -> h.name().equals(holder.name()) || h.digest().isThatOf(holder.digest()))) {
                faults.add(new InputError(InputError.Code.DUPLICATE, place, null, Accepted.EACH_ONCE.with()));
            }
            holders.add(holder);
        }
        faults.check(!holders.isEmpty(), InputError.Code.MISSING, "", null, AcceptedKey.ANY);
        faults.reject();
        return new ApiKeys(holders);
    }

    /** Whether callers need a key. */
    public boolean areAskedFor() {
        return !holders.isEmpty();
    }

    /** The holder of a key. Takes the same time whichever key it is, and however much of it is right. */
    public Optional<String> findHolder(String key) {
        Digest given = new Digest(key);
        Optional<String> found = Optional.empty();
        for (Holder holder : holders) {
            if (holder.digest().isThatOf(given)) {
                found = Optional.of(holder.name());
            }
        }
        return found;
    }
}

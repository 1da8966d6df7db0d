package org.lensward.flow.auth;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;

/** A word that is shown to the record alone. Printing it prints nothing of it. */
public final class Secret {

    private static final String FILE = "file:";

    private final String word;

    private Secret(String word) {
        this.word = word;
    }

    /**
     * The secret that a setting holds.
     *
     * @param setting the word itself, or {@code file:} and the path of a file that holds nothing else; a line end behind it is not
     *     part of it
     */
    public static Secret of(String setting) {
        return new Secret(setting.startsWith(FILE) ? inFile(Path.of(setting.substring(FILE.length()))) : setting);
    }

    private static String inFile(Path file) {
        try {
            return Files.readString(file).stripTrailing();
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The secret in " + file + " cannot be read", unreadable);
        }
    }

    /** Whether there is none. */
    public boolean isEmpty() {
        return word.isEmpty();
    }

    /** Whether that is the word, in a time that does not tell how much of it is right. */
    public boolean isSame(String shown) {
        return MessageDigest.isEqual(word.getBytes(StandardCharsets.UTF_8), shown.getBytes(StandardCharsets.UTF_8));
    }

    /** The word, to be shown to the record. */
    public String reveal() {
        return word;
    }

    @Override
    public String toString() {
        return "***";
    }
}

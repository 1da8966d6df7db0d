package org.lensward.record.incoming;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** An id that follows from what the sender calls a thing, so that sending it again overwrites and never doubles. */
public final class LastingId {

    private static final int LENGTH = 32;

    private LastingId() {}

    /**
     * The id.
     *
     * @param way how it came, such as {@code hl7}
     * @param names what the sender calls it, widest first
     */
    public static String of(String way, String... names) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String name : names) {
                digest.update(name.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return way + "-" + HexFormat.of().formatHex(digest.digest()).substring(0, LENGTH);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }
}

package org.lensward.outcome.error;

/**
 * Some of the eyes.
 *
 * @param by what they have in common
 * @param name which of those: a band such as {@code 22.00 to 24.50 mm}, a model's or a surgeon's key
 */
public record Group(By by, String name) implements Comparable<Group> {

    /** What eyes of a group have in common. */
    public enum By {
        EVERYONE,
        AXIAL_LENGTH,
        LENS_MODEL,
        BIOMETRY_METHOD,
        SURGEON
    }

    /** All eyes that count. */
    public static final Group EVERYONE = new Group(By.EVERYONE, "all");

    @Override
    public int compareTo(Group other) {
        int kind = by.compareTo(other.by);
        return kind == 0 ? name.compareTo(other.name) : kind;
    }
}

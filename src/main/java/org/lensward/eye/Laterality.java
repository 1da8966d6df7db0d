package org.lensward.eye;

import java.util.Locale;

/** One of a person's two eyes. */
public enum Laterality {
    RIGHT,
    LEFT;

    public Laterality fellow() {
        return this == RIGHT ? LEFT : RIGHT;
    }

    /** As it is read aloud: {@code right} or {@code left}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}

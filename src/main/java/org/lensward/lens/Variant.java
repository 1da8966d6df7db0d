package org.lensward.lens;

/** In what form a published formula is used. */
public enum Variant {
    /** As its authors published it. */
    AS_PUBLISHED,
    /** Told an adjusted length, because the eye is long. */
    LONG_EYE,
    /** Told the corneal power of before the laser for the lens position, and that of now for the vergence. */
    DOUBLE_K
}

package org.lensward.lens.stock;

/** Why a lens cannot be had from stock, the furthest from having it first. */
public enum ShortageReason {
    /** The operation's day is over. */
    DAY_PAST("its day is past"),
    /** The bank holds no carton of this kind. */
    NONE_HELD("no carton of this kind is held"),
    /** The bank holds no carton beside those this operation has. */
    NO_FURTHER_ONE("no carton of this kind is held beside the one for the same operation"),
    /** Every other carton is quarantined. */
    ALL_QUARANTINED("every other carton of this kind is quarantined"),
    /** Every other usable carton has expired by the day. */
    EXPIRED_BY_THE_DAY("every other carton of this kind is out of date by the day"),
    /** What else is in date lies at sites from which it cannot arrive by the day. */
    TOO_FAR("every other carton of this kind in date lies too far away to arrive by the day"),
    /** What else could serve is promised to other operations. */
    ALL_PROMISED("every other carton of this kind is promised to another operation");

    private final String words;

    ShortageReason(String words) {
        this.words = words;
    }

    /** As a message says it. */
    @Override
    public String toString() {
        return words;
    }
}

package org.lensward.risk.preparation;

import java.util.Locale;
import java.util.Optional;
import org.lensward.finding.Coded;
import org.lensward.risk.TheatreItem;

/** How the eye is made numb. */
public enum Anaesthetic implements Coded {
    TOPICAL(TheatreItem.TOPICAL_ANAESTHETIC, Optional.of(Purpose.TOPICAL_ANAESTHETIC)),
    SUB_TENON(TheatreItem.SUB_TENON_SET, Optional.of(Purpose.BLOCK_ANAESTHETIC)),
    NEEDLE_BLOCK(TheatreItem.NEEDLE_BLOCK_SET, Optional.of(Purpose.BLOCK_ANAESTHETIC)),
    GENERAL(TheatreItem.GENERAL_ANAESTHETIC, Optional.empty());

    private final TheatreItem item;
    private final Optional<Purpose> agent;

    Anaesthetic(TheatreItem item, Optional<Purpose> agent) {
        this.item = item;
        this.agent = agent;
    }

    TheatreItem item() {
        return item;
    }

    /** The agent it needs from the policy; a general one is the anaesthetist's own. */
    Optional<Purpose> agent() {
        return agent;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return this == SUB_TENON ? "sub-Tenon" : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

package org.lensward.risk.preparation;

import java.util.Locale;
import java.util.Optional;
import org.lensward.risk.TheatreItem;

/** What an agent is given for. */
public enum Purpose {
    ANTISEPTIC(TheatreItem.ANTISEPTIC),
    /** Into the anterior chamber at the end. */
    ANTIBIOTIC(TheatreItem.INTRACAMERAL_ANTIBIOTIC),
    /** Into the anterior chamber, for an iris that is floppy or a pupil that stays small. */
    MYDRIATIC(TheatreItem.INTRACAMERAL_MYDRIATIC),
    TOPICAL_ANAESTHETIC(TheatreItem.TOPICAL_ANAESTHETIC),
    /** The solution of a sub-Tenon or needle block; the set lies ready for either. */
    BLOCK_ANAESTHETIC,
    /** Before the eye is opened. */
    PRESSURE_LOWERING(TheatreItem.PRESSURE_LOWERING_DRUG),
    /** After the operation. */
    PRESSURE_PROPHYLAXIS(TheatreItem.PRESSURE_LOWERING_DRUG),
    /** Drops that are prescribed, not brought to theatre. */
    ANTI_INFLAMMATORY,
    DISPERSIVE_VISCOELASTIC(TheatreItem.DISPERSIVE_VISCOELASTIC),
    COHESIVE_VISCOELASTIC(TheatreItem.COHESIVE_VISCOELASTIC);

    private final Optional<TheatreItem> item;

    Purpose() {
        this.item = Optional.empty();
    }

    Purpose(TheatreItem item) {
        this.item = Optional.of(item);
    }

    /** What lies ready in theatre for it; nothing for an agent given elsewhere or as part of a set. */
    public Optional<TheatreItem> item() {
        return item;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

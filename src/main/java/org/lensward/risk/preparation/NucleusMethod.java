package org.lensward.risk.preparation;

import java.util.List;
import java.util.Locale;
import org.lensward.risk.TheatreItem;

/** How the nucleus is taken apart. */
public enum NucleusMethod {
    /** Split along its grain with a second instrument; pulls little on the zonules. */
    CHOP(List.of(TheatreItem.SECOND_INSTRUMENT)),
    /** Grooved, turned and cracked with a second instrument. */
    DIVIDE(List.of(TheatreItem.SECOND_INSTRUMENT)),
    /** Cut by a loop that is opened around it inside the capsule. */
    LOOP(List.of(TheatreItem.NUCLEUS_LOOP, TheatreItem.SECOND_INSTRUMENT, TheatreItem.COHESIVE_VISCOELASTIC));

    private final List<TheatreItem> needs;

    NucleusMethod(List<TheatreItem> needs) {
        this.needs = needs;
    }

    /** What has to lie ready for it. */
    public List<TheatreItem> needs() {
        return needs;
    }

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}

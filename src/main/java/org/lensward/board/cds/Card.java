package org.lensward.board.cds;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/**
 * What a clinician is shown (CDS Hooks 2.0, card attributes). Names eye, day and lens, never the patient.
 *
 * @param uuid by which feedback names it
 * @param summary one sentence of fewer than 140 characters
 * @param indicator how urgent
 * @param source who says it
 * @param detail reasons and remedies in Markdown; left out where there are none
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
record Card(String uuid, String summary, Indicator indicator, Source source, String detail) {

    private static final int LONGEST_SUMMARY = 139;

    Card {
        summary = summary.length() <= LONGEST_SUMMARY
                ? summary
                : summary.substring(0, LONGEST_SUMMARY - 3).stripTrailing() + "...";
    }

    /**
     * A card of ours. One call's card about one thing keeps its uuid however often the call is repeated.
     *
     * @param about the call and what of it the card speaks of
     */
    static Card of(String about, Indicator indicator, String summary, String detail) {
        String uuid =
                UUID.nameUUIDFromBytes(about.getBytes(StandardCharsets.UTF_8)).toString();
        return new Card(uuid, summary, indicator, Source.LENSWARD, detail);
    }

    /**
     * Who says it.
     *
     * @param label as shown
     */
    record Source(String label) {
        private static final Source LENSWARD = new Source("Lensward: decision support, the surgeon confirms");
    }
}

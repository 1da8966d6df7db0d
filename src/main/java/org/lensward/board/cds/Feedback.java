package org.lensward.board.cds;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * What a user did with a card (CDS Hooks 2.0, feedback). A comment of the user's own is not read: it may name a patient.
 *
 * @param card the card's uuid
 * @param outcome accepted or overridden
 * @param at when
 * @param reason system and code of the reason for overriding it, as {@code system|code}
 */
record Feedback(String card, String outcome, Instant at, Optional<String> reason) {

    private static final Set<String> OUTCOMES = Set.of("accepted", "overridden");

    /** Reads all that was sent together. */
    static List<Feedback> read(JsonNode sent) {
        if (!sent.path("feedback").isArray()) {
            throw Refusal.malformed("feedback is missing.");
        }
        List<Feedback> read = new ArrayList<>();
        sent.path("feedback").forEach(each -> read.add(one(each)));
        return read;
    }

    private static Feedback one(JsonNode each) {
        String outcome = HookCall.required(each, "outcome");
        if (!OUTCOMES.contains(outcome)) {
            throw Refusal.malformed("outcome is neither accepted nor overridden.");
        }
        return new Feedback(
                card(each),
                outcome,
                at(each),
                reason(each.path("overrideReason").path("reason")));
    }

    private static String card(JsonNode each) {
        try {
            return UUID.fromString(HookCall.required(each, "card")).toString();
        } catch (IllegalArgumentException noUuid) {
            throw Refusal.malformed("card is no uuid.");
        }
    }

    private static Instant at(JsonNode each) {
        try {
            return OffsetDateTime.parse(HookCall.required(each, "outcomeTimestamp"))
                    .toInstant();
        } catch (DateTimeException noTime) {
            throw Refusal.malformed("outcomeTimestamp is no ISO time.");
        }
    }

    private static Optional<String> reason(JsonNode coding) {
        return Optional.of(coding.path("code").asText(""))
                .filter(code -> !code.isBlank())
                .map(code -> coding.path("system").asText("") + "|" + code);
    }
}

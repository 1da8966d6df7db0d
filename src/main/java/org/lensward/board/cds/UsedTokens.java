package org.lensward.board.cds;

import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Tokens seen while they are valid, so that none is used twice. In memory: a restart forgets them. */
final class UsedTokens {

    private final Map<String, Instant> used = new ConcurrentHashMap<>();

    /**
     * Uses a token; false where it was used before.
     *
     * @param name issuer and id of the token
     * @param until when it expires and can be forgotten
     */
    boolean use(String name, Instant until, Instant now) {
        used.values().removeIf(end -> end.isBefore(now));
        return used.putIfAbsent(name, until) == null;
    }
}

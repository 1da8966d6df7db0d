package org.lensward.board.cds;

import com.fasterxml.jackson.annotation.JsonProperty;

/** How urgent a card is (CDS Hooks 2.0, card attributes), in rising order. */
enum Indicator {
    @JsonProperty("info")
    INFO,
    @JsonProperty("warning")
    WARNING,
    @JsonProperty("critical")
    CRITICAL
}

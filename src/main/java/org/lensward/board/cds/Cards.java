package org.lensward.board.cds;

import java.util.List;

/**
 * The answer to a hook.
 *
 * @param cards what to show; none where there is nothing to say
 */
record Cards(List<Card> cards) {}

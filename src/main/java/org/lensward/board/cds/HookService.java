package org.lensward.board.cds;

import java.util.List;

/** One service: when it is called, what it needs, what it says. */
interface HookService {

    ServiceDescription description();

    /** What it says to one call. */
    List<Card> cards(HookCall call);
}

package org.lensward.board.api;

import java.util.Optional;

/** A request that says who acts. Of a person who has signed in, only their own name is taken. */
interface NamesActor {

    /** The name that will stand under what is written; empty where the request gives none. */
    Optional<String> actor();
}

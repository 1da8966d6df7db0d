package org.lensward.board.cds;

import java.util.List;
import java.util.Optional;

/** Which lenses of a booking's kit the lens bank cannot give. */
interface Shortages {

    /**
     * What is short, each with what to do; an empty list where all is there, nothing at all where the bank cannot be asked.
     *
     * @param booking its name, such as {@code ServiceRequest/b1}
     */
    Optional<List<Reason>> of(String booking);
}

package org.lensward.board.cds;

import java.util.List;

/** Which lenses of a booking's kit the lens bank cannot give. */
public interface Shortages {

    /**
     * What is short, each in a sentence; none where all is there.
     *
     * @param booking its name, such as {@code ServiceRequest/b1}
     */
    List<String> of(String booking);
}

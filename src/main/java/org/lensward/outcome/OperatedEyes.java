package org.lensward.outcome;

import java.util.List;
import java.util.stream.Stream;

/**
 * Operated eyes that can be gone through more than once, in parts that do not wait for each other. All eyes of one patient are in the
 * same part; inside a part they come ordered by patient key, and of one patient by day of surgery.
 */
public interface OperatedEyes {

    /** How many parts there are; at least one. */
    int parts();

    /** One part from its beginning; the caller closes it. */
    Stream<OperatedEye> part(int index);

    /** A few eyes in memory, in one part. */
    static OperatedEyes of(List<OperatedEye> eyes) {
        List<OperatedEye> kept = List.copyOf(eyes);
        return new OperatedEyes() {
            @Override
            public int parts() {
                return 1;
            }

            @Override
            public Stream<OperatedEye> part(int index) {
                return kept.stream();
            }
        };
    }
}

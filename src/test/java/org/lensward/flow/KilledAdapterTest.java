package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The adapter is a process of its own here; it is killed outright, with no chance to tidy up, and started again on its queue, a few times
 * in every build. {@code Kills 100} on the test class path does it a hundred times.
 */
class KilledAdapterTest {

    private static final int TIMES = 6;
    private static final long SEED = 20_261_125;

    @Test
    void killed_again_and_again_it_loses_and_doubles_nothing() throws Exception {
        try (Kills kills = new Kills(SEED)) {
            Kills.Figures figures = kills.times(TIMES);
            assertThat(figures.wrong()).as(figures.toString()).isEmpty();
            assertThat(figures.bookings()).isEqualTo(12);
            assertThat(figures.inMidWork())
                    .as("killed with bookings left to plan")
                    .isPositive();
        }
    }
}

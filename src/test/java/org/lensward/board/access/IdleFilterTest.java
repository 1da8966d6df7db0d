package org.lensward.board.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.lensward.TurnedClock;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;

/** When a session ends. */
class IdleFilterTest {

    private final TurnedClock clock = new TurnedClock("2026-12-10T08:00:00Z");

    private final IdleFilter filter = new IdleFilter(Duration.ofMinutes(30), clock);
    private final MockHttpSession session = new MockHttpSession();

    private void ask(boolean forNews, int minutesLater) throws Exception {
        clock.turn(Duration.ofMinutes(minutesLater));
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/");
        request.setSession(session);
        if (forNews) {
            request.addHeader(IdleFilter.NEWS, "x");
        }
        filter.doFilter(request, new MockHttpServletResponse(), new MockFilterChain());
    }

    @Test
    void somebody_who_works_stays_signed_in() throws Exception {
        for (int turn = 0; turn < 5; turn++) {
            ask(false, 29);
        }
        assertThat(session.isInvalid()).isFalse();
    }

    @Test
    void a_page_that_looks_for_news_by_itself_keeps_nobody_signed_in() throws Exception {
        ask(false, 0);
        ask(true, 20);
        assertThat(session.isInvalid()).isFalse();
        ask(true, 11);
        assertThat(session.isInvalid()).isTrue();
    }
}

package org.lensward.board.gate;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

/** RFC 6585, 4: 429 and when to come again. */
class RateLimitTest {

    private final RateLimit limit = new RateLimit(3, request -> Optional.of(request.getRemoteAddr()));

    private MockHttpServletResponse ask(String address) throws ServletException, IOException {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/api/days");
        request.setRemoteAddr(address);
        MockHttpServletResponse response = new MockHttpServletResponse();
        limit.doFilter(request, response, new MockFilterChain());
        return response;
    }

    @Test
    void a_caller_who_asks_without_end_is_told_when_to_come_again_and_others_are_answered() throws Exception {
        for (int time = 0; time < 3; time++) {
            assertThat(ask("192.0.2.1").getStatus()).isEqualTo(200);
        }
        MockHttpServletResponse refused = ask("192.0.2.1");
        assertThat(refused.getStatus()).isEqualTo(429);
        assertThat(Integer.parseInt(String.valueOf(refused.getHeader("Retry-After"))))
                .isBetween(1, 21);
        assertThat(refused.getContentAsString()).contains("too-many-requests");
        assertThat(ask("192.0.2.2").getStatus()).isEqualTo(200);
    }
}

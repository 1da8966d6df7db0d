package org.lensward.board.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/** Ends a session in which nobody does anything. A page that looks for news by itself would keep it alive for ever. */
final class IdleFilter extends OncePerRequestFilter {

    /** Set by a page's own looking for news. */
    static final String NEWS = "Lensward-News";

    private static final String LAST = IdleFilter.class.getName();

    private final Duration longest;
    private final Clock clock;

    IdleFilter(Duration longest, Clock clock) {
        this.longest = longest;
        this.clock = clock;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        HttpSession session = request.getSession(false);
        if (session != null) {
            Instant now = clock.instant();
            if (session.getAttribute(LAST) instanceof Instant last
                    && last.plus(longest).isBefore(now)) {
                session.invalidate();
                SecurityContextHolder.clearContext();
            } else if (request.getHeader(NEWS) == null) {
                session.setAttribute(LAST, now);
            }
        }
        chain.doFilter(request, response);
    }
}

package org.lensward.board.gate;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.http.HttpStatus;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * So many requests a minute from each caller; beyond them 429 with the seconds to wait (RFC 6585). A token bucket each, in memory: with
 * several adapters each counts for itself.
 */
final class RateLimit extends OncePerRequestFilter {

    private static final Duration MINUTE = Duration.ofMinutes(1);
    private static final int MOST_CALLERS = 10_000;

    private final int perMinute;
    private final Function<HttpServletRequest, Optional<String>> caller;
    private final Cache<String, Bucket> buckets = Caffeine.newBuilder()
            .expireAfterAccess(MINUTE.multipliedBy(2))
            .maximumSize(MOST_CALLERS)
            .build();

    RateLimit(int perMinute, Function<HttpServletRequest, Optional<String>> caller) {
        this.perMinute = perMinute;
        this.caller = caller;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<ConsumptionProbe> probe =
                caller.apply(request).map(each -> bucket(each).tryConsumeAndReturnRemaining(1));
        if (probe.isEmpty() || probe.get().isConsumed()) {
            chain.doFilter(request, response);
            return;
        }
        long seconds = Duration.ofNanos(probe.get().getNanosToWaitForRefill()).toSeconds() + 1;
        response.setHeader("Retry-After", String.valueOf(seconds));
        GateRefusal.write(
                response,
                HttpStatus.TOO_MANY_REQUESTS,
                "too-many-requests",
                "Too many requests; nothing was done with this one. Try again in " + seconds + " s.");
    }

    private Bucket bucket(String caller) {
        return buckets.get(caller, each -> Bucket.builder()
                .addLimit(limit -> limit.capacity(perMinute).refillGreedy(perMinute, MINUTE))
                .build());
    }
}

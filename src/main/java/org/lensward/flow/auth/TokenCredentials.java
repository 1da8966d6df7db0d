package org.lensward.flow.auth;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantLock;
import org.lensward.flow.RecordRefusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The token that stands, renewed before it ends. However many ask at once, one renews: while the old token still stands the others go on
 * with it, else they wait for the new one.
 */
public final class TokenCredentials implements Credentials {

    private static final Logger LOG = LoggerFactory.getLogger(TokenCredentials.class);

    /** Where a token comes from. */
    @FunctionalInterface
    interface Source {
        AccessToken ask() throws IOException;
    }

    private final Source source;
    private final Duration renewBefore;
    private final Clock clock;
    private final ReentrantLock renewing = new ReentrantLock();
    private final AtomicLong renewals = new AtomicLong();
    private volatile Optional<AccessToken> current = Optional.empty();

    TokenCredentials(Source source, Duration renewBefore, Clock clock) {
        this.source = source;
        this.renewBefore = renewBefore;
        this.clock = clock;
    }

    @Override
    public Optional<String> header() throws IOException {
        return Optional.of(token().header());
    }

    private AccessToken token() throws IOException {
        Instant now = clock.instant();
        Optional<AccessToken> standing = current.filter(each -> each.standsAt(now));
        if (standing.isEmpty()) {
            return renewedUnlessOther(Optional.empty());
        }
        AccessToken token = standing.get();
        return token.isDueAt(now, renewBefore) && renewing.tryLock() ? early(token) : token;
    }

    /** Renews a token that still stands; while no other can be had it goes on standing. */
    private AccessToken early(AccessToken standing) {
        try {
            return renewedUnlessOther(Optional.of(standing));
        } catch (IOException | RecordRefusal away) {
            LOG.warn("The token is not renewed yet: {}", away.getClass().getSimpleName());
            return standing;
        } finally {
            renewing.unlock();
        }
    }

    @Override
    public boolean renew(String refused) throws IOException {
        Optional<AccessToken> old = current.filter(each -> each.header().equals(refused));
        return !renewedUnlessOther(old).header().equals(refused);
    }

    /**
     * A new token, unless someone else renewed meanwhile.
     *
     * @param old the one that will not do; empty if any that stands will
     */
    private AccessToken renewedUnlessOther(Optional<AccessToken> old) throws IOException {
        renewing.lock();
        try {
            Instant now = clock.instant();
            Optional<AccessToken> other = current.filter(
                    each -> each.standsAt(now) && !Optional.of(each).equals(old));
            if (other.isPresent()) {
                return other.get();
            }
            AccessToken fresh = source.ask();
            current = Optional.of(fresh);
            renewals.incrementAndGet();
            return fresh;
        } finally {
            renewing.unlock();
        }
    }

    /** How many tokens were given since the start. */
    public long renewals() {
        return renewals.get();
    }
}

package org.lensward.board.cds;

import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.lensward.board.api.Refusal;
import org.lensward.finding.Evidence;
import org.lensward.finding.FindingCode;
import org.lensward.flow.RecordRefusal;
import org.lensward.record.stock.StockSheet;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the stock check says, over every operation to come: a carton that another operation needs sooner is not there. Many charts are
 * opened in a minute and the bank is large, so a check serves for a while.
 */
final class StockShortages implements Shortages {

    private static final Logger LOG = LoggerFactory.getLogger(StockShortages.class);

    private final Supplier<StockSheet> look;
    private final Duration age;
    private final Clock clock;
    private final AtomicReference<@Nullable Seen> last = new AtomicReference<>();

    /**
     * By that stock check.
     *
     * @param look makes one anew
     * @param age how old one may be
     * @param clock tells how old it is
     */
    StockShortages(Supplier<StockSheet> look, Duration age, Clock clock) {
        this.look = look;
        this.age = age;
        this.clock = clock;
    }

    private record Seen(StockSheet sheet, Instant at) {}

    @Override
    public Optional<List<Reason>> of(String booking) {
        return sheet().map(sheet -> sheet.findings(new Evidence(booking, "", "")).stream()
                .filter(each -> each.code() == FindingCode.LENS_NOT_IN_STOCK)
                .map(Reason::of)
                .toList());
    }

    private Optional<StockSheet> sheet() {
        Instant now = clock.instant();
        Seen seen = last.get();
        if (seen != null && seen.at().plus(age).isAfter(now)) {
            return Optional.of(seen.sheet());
        }
        try {
            StockSheet sheet = look.get();
            last.set(new Seen(sheet, now));
            return Optional.of(sheet);
        } catch (BaseServerResponseException | RecordRefusal | Refusal away) {
            LOG.warn("No stock check for a card: {}", away.getClass().getSimpleName());
            return Optional.empty();
        }
    }
}

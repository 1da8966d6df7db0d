package org.lensward.board.store;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.bank.BankView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the bank and its stock check fresh behind whoever looks; nobody waits for the record. When nobody has looked for a while it asks the
 * record nothing.
 */
public final class StoreWatch implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(StoreWatch.class);
    private static final Duration NOBODY_LOOKS = Duration.ofMinutes(5);

    private final BankView view;
    private final StockDesk desk;
    private final BankSettings settings;
    private final Clock clock;
    private final ScheduledExecutorService worker = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "bank");
        thread.setDaemon(true);
        return thread;
    });
    private volatile Instant looked = Instant.MIN;
    private volatile Instant due = Instant.MIN;
    private volatile Instant checkedAt = Instant.EPOCH;
    private volatile boolean away;
    private volatile Optional<StockDesk.Checked> checked = Optional.empty();

    public StoreWatch(BankView view, StockDesk desk, BankSettings settings, Clock clock) {
        this.view = view;
        this.desk = desk;
        this.settings = settings;
        this.clock = clock;
        long pause = settings.refresh().toMillis();
        worker.scheduleWithFixedDelay(this::tick, pause, pause, TimeUnit.MILLISECONDS);
    }

    /** What is known now; nothing while bank and plans are being read for the first time. */
    public Optional<StoreState> look() {
        boolean idle = !isWatched();
        looked = clock.instant();
        if (idle) {
            worker.execute(this::tick);
        }
        return view.standing()
                .filter(any -> checked.isPresent() || away)
                .map(standing -> new StoreState(standing, checked, checkedAt, away));
    }

    /** What is known, read now where nothing was read yet; nothing where the record is away. */
    public Optional<StoreState> known() {
        Optional<StoreState> standing = look();
        if (standing.isEmpty()) {
            tick();
            standing = look();
        }
        return standing;
    }

    /** A carton that was just moved stands so at once; what is short is looked at again behind. */
    public void moved(LensUnit unit) {
        view.moved(unit);
        recheck();
    }

    /** The next look behind includes the stock check. */
    public void recheck() {
        due = Instant.MIN;
        if (isWatched()) {
            worker.execute(this::tick);
        }
    }

    private boolean isWatched() {
        return looked.isAfter(clock.instant().minus(NOBODY_LOOKS));
    }

    private synchronized void tick() {
        if (!isWatched()) {
            return;
        }
        try {
            BankView.Standing standing = view.refresh();
            Instant now = clock.instant();
            if (!due.isAfter(now)) {
                due = now.plus(settings.check());
                checked = Optional.of(desk.check(desk.ahead(settings.days()), standing.units()));
                checkedAt = now;
            }
            away = false;
        } catch (RuntimeException failed) {
            due = Instant.MIN;
            away = true;
            LOG.warn("Could not look at the bank: {}", failed.getClass().getSimpleName());
        }
    }

    @Override
    public void close() {
        worker.shutdownNow();
    }
}

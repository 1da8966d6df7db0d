package org.lensward.board.day;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The lists in memory. One thread reads the record behind the readers' backs, as long as somebody looks and after everything we write;
 * no page waits for the record but the very first. If the record is away, what was read last is shown with its time.
 */
public final class DayView implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(DayView.class);
    private static final Duration FIRST = Duration.ofSeconds(20);

    private final Reading reading;
    private final DaySettings settings;
    private final Clock clock;
    private final ScheduledExecutorService behind = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "day");
        thread.setDaemon(true);
        return thread;
    });

    private volatile DaySnapshot now = DaySnapshot.NOTHING;
    private volatile Instant lastLook = Instant.EPOCH;
    private volatile Instant stockRead = Instant.EPOCH;

    /** Where it reads from. */
    public interface Reading {

        /** The lists, with the cartons of the last reading. */
        DaySnapshot lists(Map<String, StockWord> stock);

        /** The cartons for the lists' days. */
        Map<String, StockWord> stock(LocalDate from, LocalDate to);
    }

    public DayView(Reading reading, DaySettings settings, Clock clock) {
        this.reading = reading;
        this.settings = settings;
        this.clock = clock;
        long pause = settings.every().toMillis();
        behind.scheduleWithFixedDelay(this::readWhileLookedAt, pause, pause, TimeUnit.MILLISECONDS);
    }

    /** What was read last. Waits only if nothing was read yet, or nobody has looked for long. */
    public DaySnapshot now() {
        boolean rested = lastLook.plus(settings.restAfter()).isBefore(clock.instant());
        lastLook = clock.instant();
        if (now.isEmpty() || rested) {
            await(behind.submit(this::readQuietly));
            behind.execute(this::readStock);
        }
        return now;
    }

    /** We have written something: what is shown is old. */
    public void written() {
        behind.execute(() -> {
            readQuietly();
            stockRead = Instant.EPOCH;
            readStock();
        });
    }

    private void readWhileLookedAt() {
        if (lastLook.plus(settings.restAfter()).isAfter(clock.instant())) {
            readQuietly();
            readStock();
        }
    }

    private void readQuietly() {
        quietly("The lists", () -> reading.lists(now.stock()));
    }

    private void readStock() {
        if (!now.days().isEmpty() && stockRead.plus(settings.stockEvery()).isBefore(clock.instant())) {
            quietly(
                    "The bank",
                    () -> now.with(
                            reading.stock(now.days().firstKey(), now.days().lastKey())));
            stockRead = clock.instant();
        }
    }

    /** The record may be away or hold what cannot be read: the next time it may not. */
    private void quietly(String what, Supplier<DaySnapshot> read) {
        try {
            now = read.get();
        } catch (RuntimeException unread) {
            LOG.warn("{} could not be read: {}", what, unread.getClass().getSimpleName());
        }
    }

    private static void await(Future<?> read) {
        try {
            read.get(FIRST.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException late) {
            LOG.warn("The lists are late: {}", late.getClass().getSimpleName());
        }
    }

    @Override
    public void close() {
        behind.shutdownNow();
    }
}

package org.lensward.demo;

import ca.uhn.fhir.jpa.cache.IResourceChangeListenerCacheRefresher;
import ca.uhn.fhir.jpa.search.IStaleSearchDeletingSvc;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The few recurring jobs a small record needs, on one thread instead of two Quartz schedulers. */
final class RecordHousekeeping implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(RecordHousekeeping.class);
    private static final Duration REFRESH = Duration.ofSeconds(10);
    private static final Duration SWEEP = Duration.ofMinutes(1);

    private final IResourceChangeListenerCacheRefresher searchParameters;
    private final IStaleSearchDeletingSvc staleSearches;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(job -> {
        Thread thread = new Thread(job, "record-housekeeping");
        thread.setDaemon(true);
        return thread;
    });

    RecordHousekeeping(IResourceChangeListenerCacheRefresher searchParameters, IStaleSearchDeletingSvc staleSearches) {
        this.searchParameters = searchParameters;
        this.staleSearches = staleSearches;
    }

    void start() {
        every(REFRESH, "search parameter refresh", searchParameters::refreshExpiredCachesAndNotifyListeners);
        every(SWEEP, "removal of stale searches", staleSearches::pollForStaleSearchesAndDeleteThem);
    }

    @Override
    public void close() {
        timer.shutdownNow();
    }

    private void every(Duration period, String name, Runnable job) {
        Runnable guarded = () -> {
            try {
                job.run();
            } catch (RuntimeException failure) {
                // an escaping exception would end the schedule for good
                LOG.warn("{} failed, will be tried again in {}", name, period, failure);
            }
        };
        timer.scheduleWithFixedDelay(guarded, period.toMillis(), period.toMillis(), TimeUnit.MILLISECONDS);
    }
}

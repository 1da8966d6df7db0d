package org.lensward.flow;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A switch: while it is on, nothing is written to the record; what would be written is kept here instead, the newest for each booking.
 * It holds no patient data. When it is switched off, every active booking is looked at again.
 */
public final class DryRun {

    private static final Logger LOG = LoggerFactory.getLogger(DryRun.class);
    private static final int KEPT = 10_000;

    private final List<Runnable> whenOff = new CopyOnWriteArrayList<>();
    private final Map<String, WouldWrite> reports = new LinkedHashMap<>();
    private volatile boolean on;

    /** The switch as the settings have it. */
    public DryRun(boolean on) {
        this.on = on;
    }

    /** For whoever always writes. */
    static DryRun never() {
        return new DryRun(false);
    }

    /** Whether nothing is written. */
    public boolean isOn() {
        return on;
    }

    /** Switches it; what was reported of an earlier dry run is forgotten when one begins. */
    public synchronized void turn(boolean wanted) {
        if (on == wanted) {
            return;
        }
        LOG.warn(wanted ? "Dry run: nothing is written to the record" : "Dry run over: the record is written");
        if (wanted) {
            reports.clear();
        }
        on = wanted;
        if (!wanted) {
            whenOff.forEach(Runnable::run);
        }
    }

    /** What is to be done once the record is written again. */
    void whenOff(Runnable action) {
        whenOff.add(action);
    }

    /** Keeps what would be written. */
    synchronized void keep(WouldWrite report) {
        reports.remove(report.booking());
        reports.put(report.booking(), report);
        if (reports.size() > KEPT) {
            reports.remove(reports.keySet().iterator().next());
        }
    }

    /** What would have been written, one for each booking, the latest last; at most 10,000. */
    public synchronized List<WouldWrite> reports() {
        return new ArrayList<>(reports.values());
    }
}

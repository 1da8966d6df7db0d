package org.lensward;

import java.lang.management.ManagementFactory;
import java.util.Locale;

/** Says what is going on and how long it has taken since the process began. */
final class Progress {

    private final long began = ManagementFactory.getRuntimeMXBean().getStartTime();

    void say(String what) {
        double seconds = (System.currentTimeMillis() - began) / 1000.0;
        System.out.println(String.format(Locale.ROOT, "%6.1f s  %s", seconds, what));
    }
}

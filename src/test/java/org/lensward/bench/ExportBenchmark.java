package org.lensward.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.flow.PolicyFile;
import org.lensward.record.Fhir;
import org.lensward.record.outcome.InventedExport;
import org.lensward.record.outcome.OutcomeReading;
import org.lensward.record.outcome.OutcomeStudy;

/**
 * A bulk export of invented eyes read and studied, once each for the numbers of eyes given (10,000 where none is): wall clock, processor time
 * (which other work on the machine disturbs least), and the heap left after a collection. To be run with a bounded heap, such as {@code -Xmx512m}, on the test class path:
 *
 * <pre>
 * java -Xmx512m -cp ... org.lensward.bench.ExportBenchmark 10000 100000 1000000
 * </pre>
 */
public final class ExportBenchmark {

    private ExportBenchmark() {}

    public static void main(String... numbers) throws IOException {
        for (String number : numbers.length == 0 ? new String[] {"10000"} : numbers) {
            int eyes = Integer.parseInt(number);
            Path folder = Files.createTempDirectory("lensward-bench-");
            List<Path> files = InventedExport.write(folder, eyes);
            long bytes = 0;
            for (Path file : files) {
                bytes += Files.size(file);
            }
            measure(eyes, files, bytes);
            for (Path file : files) {
                Files.delete(file);
            }
            Files.delete(folder);
        }
    }

    private static void measure(int eyes, List<Path> files, long bytes) throws IOException {
        Instant start = Instant.now();
        long worked = worked();
        try (OutcomeReading reading =
                OutcomeReading.ofFiles(Fhir.r4(), PolicyFile.shipped().biometry(), files)) {
            Duration read = Duration.between(start, Instant.now());
            OutcomeStudy study = OutcomeStudy.of(reading, OutcomePolicyFile.shipped(), reading.catalogue());
            Duration all = Duration.between(start, Instant.now());
            System.gc();
            long used =
                    Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
            System.out.printf(
                    Locale.ROOT,
                    "%,9d eyes, %,6d MB: read in %,7.1f s, studied in %,6.1f s more; %,7.1f s of processor time (%5.0f us an eye); %d counted;"
                            + " heap after it %d MB of %d%n",
                    eyes,
                    bytes >> 20,
                    read.toMillis() / 1000.0,
                    all.minus(read).toMillis() / 1000.0,
                    (worked() - worked) / 1e9,
                    (worked() - worked) / 1e3 / eyes,
                    study.audit().counted(),
                    used >> 20,
                    Runtime.getRuntime().maxMemory() >> 20);
        }
    }

    /** Processor time of this process, nanoseconds. */
    private static long worked() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
}

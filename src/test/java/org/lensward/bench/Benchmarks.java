package org.lensward.bench;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs the benchmarks and prints one line for each: time and allocation per operation. From the project's folder:
 *
 * <pre>
 * mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath
 * java -cp target/test-classes:target/classes:$(cat target/classpath) org.lensward.bench.Benchmarks
 * </pre>
 */
public final class Benchmarks {

    private Benchmarks() {}

    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(OpticsBenchmark.class.getName())
                        .addProfiler(GCProfiler.class)
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        Map<String, Double> times = new TreeMap<>();
        for (RunResult result : results) {
            String name = result.getPrimaryResult().getLabel();
            double time = result.getPrimaryResult().getScore();
            times.put(name, time);
            System.out.printf("%-24s %10.1f ns/op %10.0f B/op%n", name, time, allocated(result));
        }
        System.out.printf(
                "bisection / formula      %10.1f times%n",
                times.getOrDefault("oneFormulaByBisection", Double.NaN) / times.getOrDefault("oneFormula", Double.NaN));
    }

    private static double allocated(RunResult result) {
        Result<?> norm = result.getSecondaryResults().get("gc.alloc.rate.norm");
        return norm == null ? Double.NaN : norm.getScore();
    }
}

package org.lensward.bench;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs the benchmarks and prints one line for each: mean and best time (the best is the one that other work on
 * the machine disturbed least) and allocation per operation; then the ratio of the best times to a plain bisection. From the project's folder:
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
                        .include(StockBenchmark.class.getName())
                        .addProfiler(GCProfiler.class)
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        Map<String, Double> times = new TreeMap<>();
        for (RunResult result : results) {
            String name = result.getPrimaryResult().getLabel() + parameters(result.getParams());
            double mean = result.getPrimaryResult().getScore();
            double best = result.getPrimaryResult().getStatistics().getMin();
            times.put(name, best);
            String unit = result.getPrimaryResult().getScoreUnit();
            System.out.printf("%-34s %9.1f %s mean %9.1f best %7.0f B/op%n", name, mean, unit, best, allocated(result));
        }
        times.forEach((name, time) -> {
            Double bisection = times.get(name.replace("oneFormula ", "oneFormulaByBisection "));
            if (name.startsWith("oneFormula ") && bisection != null) {
                System.out.printf("%-34s %10.1f times as fast as bisection%n", name, bisection / time);
            }
        });
    }

    private static String parameters(BenchmarkParams parameters) {
        return parameters.getParamsKeys().stream()
                .map(key -> " " + parameters.getParam(key))
                .collect(Collectors.joining());
    }

    private static double allocated(RunResult result) {
        Result<?> norm = result.getSecondaryResults().get("gc.alloc.rate.norm");
        return norm == null ? Double.NaN : norm.getScore();
    }
}

package org.lensward.bench;

import java.util.concurrent.TimeUnit;
import org.lensward.lens.stock.Allocation;
import org.lensward.lens.stock.StockCheck;
import org.lensward.lens.stock.Stocks;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;

/** The stock check of a week. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class StockBenchmark {

    /** 1,000 operations with a kit of four each against 20,000 cartons. */
    @Benchmark
    public Allocation stockCheck(Bank bank) {
        return StockCheck.allocate(bank.needs, bank.units, bank.policy, Stocks.TODAY);
    }
}

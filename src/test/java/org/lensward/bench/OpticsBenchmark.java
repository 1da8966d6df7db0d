package org.lensward.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.analysis.solvers.BisectionSolver;
import org.lensward.eye.BiometryMethod;
import org.lensward.optics.Formula;
import org.lensward.optics.Formulas;
import org.lensward.optics.ThinEye;
import org.lensward.optics.accuracy.ErrorBudget;
import org.lensward.optics.accuracy.SpreadPolicy;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.Incision;
import org.lensward.optics.toric.PosteriorCornea;
import org.lensward.optics.toric.ToricChoice;
import org.lensward.optics.toric.ToricEye;
import org.lensward.plan.EyePlan;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/** One formula, the same by bisection, and everything about one eye. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 10, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class OpticsBenchmark {

    private static final SpreadPolicy SPREADS = SpreadPolicy.usual();
    private static final Millimetres SULCUS = Millimetres.of(-0.5);
    private static final Incision INCISION = new Incision(Dioptres.of(0.3), Degrees.of(110));

    /** The power for a target by one formula. */
    @Benchmark
    public Dioptres oneFormula(Theatre theatre, Chosen chosen) {
        return see(chosen.formula, theatre).power(theatre.target);
    }

    /** The same power found by halving an interval on the same optics until the refraction is right to 0.000001 D. */
    @Benchmark
    public double oneFormulaByBisection(Theatre theatre, Chosen chosen) {
        ThinEye eye = see(chosen.formula, theatre);
        double target = theatre.target.value();
        return new BisectionSolver(1e-6)
                .solve(200, power -> eye.refraction(Dioptres.of(power)).value() - target, -10, 45);
    }

    /** Five formulas, their powers in the bag and in the sulcus, a toric lens with its rotations, the error budget and the table. */
    @Benchmark
    public void fullEye(Theatre theatre, Blackhole plan) {
        List<ThinEye> seen = new ArrayList<>(5);
        for (Formula formula : Formulas.all()) {
            ThinEye eye = see(formula, theatre);
            seen.add(eye);
            plan.consume(eye.power(theatre.target));
            plan.consume(eye.withLensMoved(SULCUS).power(theatre.target));
        }
        ThinEye eye = seen.get(0);
        Dioptres label = Dioptres.of(Math.rint(eye.power(theatre.target).value() * 2) / 2);
        Astigmatism anterior = Astigmatism.of(theatre.astigmatism, theatre.steep);
        Astigmatism net = INCISION.after(PosteriorCornea.ABULAFIA_KOCH.net(anterior));
        plan.consume(ToricChoice.of(new ToricEye(eye, net), label, theatre.cylinders));
        ErrorBudget budget = ErrorBudget.of(eye, label, SPREADS.of(BiometryMethod.OPTICAL, theatre.shape));
        plan.consume(budget.largest());
        plan.consume(budget.within(Dioptres.of(0.5), eye.refraction(label), theatre.target));
        plan.consume(budget.within(Dioptres.of(1), eye.refraction(label), theatre.target));
        for (ThinEye each : seen) {
            theatre.labels.forEach(power -> plan.consume(each.refraction(power)));
        }
    }

    /** The real planner: gates, risk, five formulas, the kit of four, toric lens, error budgets, tables and fingerprint. */
    @Benchmark
    public EyePlan wholePlan(Booked booked) {
        return booked.planner.plan(booked.planning);
    }

    private static ThinEye see(Formula formula, Theatre theatre) {
        return formula.see(theatre.shape, theatre.constants, theatre.evidence)
                .value()
                .orElseThrow();
    }
}

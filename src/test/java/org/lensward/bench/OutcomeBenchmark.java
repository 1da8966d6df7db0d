package org.lensward.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.random.Well19937c;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.outcome.SimulatedEyes;
import org.lensward.outcome.constant.ConstantStudy;
import org.lensward.outcome.constant.Proposal;
import org.lensward.outcome.error.AuditReport;
import org.lensward.outcome.error.FormulaComparison;
import org.lensward.outcome.error.Group;
import org.lensward.outcome.error.RefractiveAudit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * The refractive audit and the constants of five formulas for ten thousand, a hundred thousand and a million simulated eyes, one after
 * another in one run, and what an eye costs in each. Run it as {@link Benchmarks}, with {@code -Xmx1g}.
 */
public final class OutcomeBenchmark {

    private static final OutcomePolicy POLICY = OutcomePolicyFile.shipped();
    private static final LensConstants USED = LensConstants.published(
            Optional.of(PureNumber.of(118.7)),
            Optional.of(Millimetres.of(1.62)),
            Optional.of(Millimetres.of(5.37)),
            Optional.of(new HaigisConstants(Millimetres.of(-0.20), PureNumber.of(0.25), PureNumber.of(0.19))));

    private OutcomeBenchmark() {}

    /** Both at once, so that eyes are gone through once. */
    private static final class Both implements EyeTally<Both> {

        private final RefractiveAudit audit = new RefractiveAudit(POLICY.groups());
        private final ConstantStudy study = new ConstantStudy(POLICY.learning(), (model, method) -> Optional.of(USED));

        @Override
        public void add(Admitted admitted) {
            audit.add(admitted);
            study.add(admitted);
        }

        @Override
        public void merge(Both other) {
            audit.merge(other.audit);
            study.merge(other.study);
        }
    }

    public static void main(String[] arguments) {
        System.out.println("warming up");
        run(200_000);
        double first = run(10_000);
        for (long eyes : new long[] {100_000, 1_000_000}) {
            System.out.printf(Locale.ROOT, "  cost of an eye: %.2f of that among 10,000%n", run(eyes) / first);
        }
        compare(1_000_000);
    }

    private static SimulatedEyes simulated(long eyes) {
        SimulatedEyes.Law law = new SimulatedEyes.Law(FormulaName.HAIGIS, USED);
        return new SimulatedEyes(law, USED, 0.4, eyes, 2 * Runtime.getRuntime().availableProcessors(), 7);
    }

    /** Nanoseconds of processor that this process has taken; other work on the machine does not count. */
    private static long cpu() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    /** Microseconds of processor for each eye. */
    private static double run(long eyes) {
        long begin = cpu();
        long drawn = simulated(eyes)
                .part(0)
                .mapToLong(eye -> eye.after().refractions().size())
                .sum();
        double drawing = (cpu() - begin) / 1e3 / drawn;
        long cpu = cpu();
        long start = System.nanoTime();
        Both both = EyeTally.over(simulated(eyes), POLICY, Both::new);
        long read = System.nanoTime();
        double worked = (cpu() - cpu) / 1e9;
        AuditReport report = both.audit.report();
        List<Proposal> proposals = both.study.proposals(new Well19937c(1));
        double fitting = (cpu() - cpu) / 1e9 - worked;
        double each = worked * 1e6 / eyes;
        System.out.printf(
                Locale.ROOT,
                "%,9d eyes: %6.2f s through the eyes, %.2f s of processor (%.2f us each; drawing one takes %.2f us),"
                        + " %5.2f s of processor to fit %d constants; %,d counted, best SD %s; %d MB used%n",
                eyes,
                (read - start) / 1e9,
                worked,
                each,
                drawing,
                fitting,
                proposals.size(),
                report.counted(),
                report.of(Group.EVERYONE).get(0).deviation(),
                (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20);
        return each;
    }

    private static void compare(long eyes) {
        long start = cpu();
        List<FormulaName> all = List.of(
                FormulaName.SRK_T, FormulaName.T2, FormulaName.HOLLADAY_1, FormulaName.HOFFER_Q, FormulaName.HAIGIS);
        int pairs = FormulaComparison.compare(simulated(eyes), POLICY, all, new Well19937c(1))
                .size();
        System.out.printf(
                Locale.ROOT,
                "%,9d eyes: %6.2f s of processor to compare %d pairs of formulas, two passes%n",
                eyes,
                (cpu() - start) / 1e9,
                pairs);
    }
}

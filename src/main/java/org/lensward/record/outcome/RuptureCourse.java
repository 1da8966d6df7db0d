package org.lensward.record.outcome;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import org.lensward.outcome.OutcomePolicy.ComplicationPolicy;
import org.lensward.outcome.complication.CusumLimits;
import org.lensward.outcome.complication.Operation;
import org.lensward.outcome.complication.RuptureSeries;
import org.lensward.outcome.complication.SeriesPoint;
import org.lensward.quantity.Probability;

/**
 * How ruptures came over time against what was foretold, in the order of the operations.
 *
 * @param points enough of them to draw; every signal is among the first {@link #SHOWN} of its kind
 * @param limits where an arm signals; empty where there is no operation
 * @param worse signals of worse
 * @param better signals of better
 * @param last how it stands; empty where there is no operation
 */
public record RuptureCourse(
        List<SeriesPoint> points, Optional<CusumLimits> limits, long worse, long better, Optional<SeriesPoint> last) {

    /** Points drawn; more would lie on each other. */
    static final int SHOWN = 600;

    /** Risks that the limits are simulated from. */
    private static final int MIX = 5000;

    public RuptureCourse {
        points = List.copyOf(points);
    }

    static RuptureCourse of(RuptureDays days, ComplicationPolicy policy, RandomGenerator dice) throws IOException {
        Mix mix = new Mix();
        days.forEach((day, expected, rupture) -> mix.take(expected));
        if (mix.risks.isEmpty()) {
            return new RuptureCourse(List.of(), Optional.empty(), 0, 0, Optional.empty());
        }
        CusumLimits limits = CusumLimits.simulated(mix.risks, policy, dice);
        Walk walk = new Walk(new RuptureSeries(policy.odds().value(), limits), Math.max(1, mix.all / SHOWN));
        days.forEach(walk::step);
        return new RuptureCourse(
                walk.points, Optional.of(limits), walk.worse, walk.better, Optional.ofNullable(walk.last));
    }

    /** The first risks, and how many there are in all. */
    private static final class Mix {

        private final List<Probability> risks = new ArrayList<>();
        private long all;

        void take(Probability expected) {
            all++;
            if (risks.size() < MIX) {
                risks.add(expected);
            }
        }
    }

    private static final class Walk {

        private final RuptureSeries series;
        private final long stride;
        private final List<SeriesPoint> points = new ArrayList<>();
        private long worse;
        private long better;
        private @Nullable SeriesPoint last;

        Walk(RuptureSeries series, long stride) {
            this.series = series;
            this.stride = stride;
        }

        void step(LocalDate day, Probability expected, boolean rupture) {
            SeriesPoint point = series.next(new Operation(day, "everyone", expected, Optional.empty(), rupture));
            last = point;
            worse += point.signal() == SeriesPoint.Signal.WORSE ? 1 : 0;
            better += point.signal() == SeriesPoint.Signal.BETTER ? 1 : 0;
            boolean signal = point.signal() != SeriesPoint.Signal.NONE && worse + better <= SHOWN;
            if (signal || point.number() % stride == 0) {
                points.add(point);
            }
        }
    }
}

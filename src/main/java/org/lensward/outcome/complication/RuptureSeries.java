package org.lensward.outcome.complication;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.lensward.outcome.complication.SeriesPoint.Signal;
import org.lensward.quantity.PureNumber;

/**
 * One surgeon's or one unit's operations in the order of their days: VLAD (Lovegrove et al., Lancet 1997;350:1128; value from memory)
 * and the two-sided risk-adjusted CUSUM of Steiner et al., Biostatistics 2000;1:441. An arm that reaches its limit signals and starts
 * again from nought.
 */
public final class RuptureSeries {

    private final CusumArms arms;
    private final CusumLimits limits;
    private long number;
    private double saved;
    private @Nullable LocalDate last;

    /**
     * Before the first operation.
     *
     * @param odds the odds ratio to find, above 1; its inverse for the lower arm
     */
    public RuptureSeries(PureNumber odds, CusumLimits limits) {
        if (odds.value() <= 1) {
            throw new IllegalArgumentException("A series watches for odds above 1, not " + odds);
        }
        this.arms = new CusumArms(odds.value());
        this.limits = limits;
    }

    /**
     * Takes in the next operation.
     *
     * @throws IllegalArgumentException if it is earlier than the last
     */
    public SeriesPoint next(Operation operation) {
        if (last != null && operation.on().isBefore(last)) {
            throw new IllegalArgumentException("A series runs forward in time");
        }
        last = operation.on();
        number++;
        double chance = operation.expected().value();
        saved += chance - (operation.rupture() ? 1 : 0);
        arms.next(chance, operation.rupture());
        SeriesPoint point = new SeriesPoint(
                number,
                operation.on(),
                PureNumber.of(saved),
                PureNumber.of(arms.worse()),
                PureNumber.of(arms.better()),
                signal());
        restart(point.signal());
        return point;
    }

    private Signal signal() {
        if (arms.worse() >= limits.worse().value()) {
            return Signal.WORSE;
        }
        return arms.better() <= limits.better().value() ? Signal.BETTER : Signal.NONE;
    }

    private void restart(Signal signal) {
        switch (signal) {
            case WORSE -> arms.restartWorse();
            case BETTER -> arms.restartBetter();
            case NONE -> {}
        }
    }
}

package org.lensward.outcome.opening;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.lensward.outcome.Opening;
import org.lensward.quantity.PureNumber;

/** The openings of one kind, as eyes pass: when made, and in each period what they lost and how far off they lay. */
final class Course {

    private final DoubleSummaryStatistics made = new DoubleSummaryStatistics();
    private final List<Period> periods = new ArrayList<>();

    /**
     * One follow-up period.
     *
     * @param contraction share of the diameter lost, per cent
     * @param squares of that
     * @param area share of the area lost, per cent
     * @param off decentration, mm
     */
    record Period(
            DoubleSummaryStatistics contraction,
            DoubleSummaryStatistics squares,
            DoubleSummaryStatistics area,
            DoubleSummaryStatistics off) {

        static Period empty() {
            return new Period(
                    new DoubleSummaryStatistics(),
                    new DoubleSummaryStatistics(),
                    new DoubleSummaryStatistics(),
                    new DoubleSummaryStatistics());
        }

        void add(double diameterMade, Opening.Seen seen) {
            double left = seen.diameter().value() / diameterMade;
            double lost = 100 * (1 - left);
            contraction.accept(lost);
            squares.accept(lost * lost);
            area.accept(100 * (1 - left * left));
            seen.decentration().ifPresent(apart -> off.accept(apart.value()));
        }

        void merge(Period other) {
            contraction.combine(other.contraction);
            squares.combine(other.squares);
            area.combine(other.area);
            off.combine(other.off);
        }

        /** Standard deviation of the contraction, with eyes - 1 degrees of freedom; empty for a single eye. */
        Optional<PureNumber> deviation() {
            double eyes = contraction.getCount();
            double about = squares.getSum() - contraction.getSum() * contraction.getAverage();
            return eyes > 1 ? Optional.of(PureNumber.of(Math.sqrt(Math.max(0, about) / (eyes - 1)))) : Optional.empty();
        }
    }

    Course(int count) {
        for (int period = 0; period < count; period++) {
            periods.add(Period.empty());
        }
    }

    void add(double diameterMade, List<Optional<Opening.Seen>> later) {
        made.accept(diameterMade);
        for (int period = 0; period < periods.size(); period++) {
            Period each = periods.get(period);
            later.get(period).ifPresent(seen -> each.add(diameterMade, seen));
        }
    }

    DoubleSummaryStatistics made() {
        return made;
    }

    Period period(int index) {
        return periods.get(index);
    }

    void merge(Course other) {
        made.combine(other.made);
        for (int period = 0; period < periods.size(); period++) {
            periods.get(period).merge(other.periods.get(period));
        }
    }
}

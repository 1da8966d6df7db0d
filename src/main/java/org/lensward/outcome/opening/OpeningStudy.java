package org.lensward.outcome.opening;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.lensward.eye.Limit;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.Exclusion;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.Opening;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OutcomePolicy.GroupPolicy;
import org.lensward.quantity.Days;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.opening.OpeningTechnique;

/**
 * How openings contract and drift, by technique and planned diameter, as eyes pass. An opening counts where its technique and plan are
 * told and it was measured when made; of several measurements in one period an eye's last counts.
 */
public final class OpeningStudy implements EyeTally<OpeningStudy> {

    /** Plans are grouped to the quarter of a millimetre. */
    private static final double STEP = 0.25;

    /** Days that no one is followed beyond. */
    private static final Days END = Days.of(36_525);

    private final List<Days> ends;
    private final SortedMap<Kind, Course> courses =
            new TreeMap<>(Comparator.comparing(Kind::technique).thenComparing(Kind::planned));

    private record Kind(OpeningTechnique technique, Millimetres planned) {}

    /** Of no eye yet. */
    public OpeningStudy(GroupPolicy policy) {
        List<Days> all =
                new ArrayList<>(policy.followUps().stream().map(Limit::value).toList());
        all.add(END);
        this.ends = List.copyOf(all);
    }

    @Override
    public void add(Admitted admitted) {
        boolean again = admitted instanceof Admitted.Excluded out && out.reason() == Exclusion.DUPLICATE;
        Optional<Opening> opening =
                again ? Optional.empty() : admitted.eye().after().opening();
        opening.ifPresent(seen -> kind(seen).ifPresent(kind -> seen.made()
                .ifPresent(made -> course(kind).add(made.diameter().value(), lastOfEachPeriod(admitted.eye(), seen)))));
    }

    private static Optional<Kind> kind(Opening opening) {
        return opening.technique().flatMap(technique -> opening.planned()
                .map(planned -> new Kind(technique, Millimetres.of(Math.rint(planned.value() / STEP) * STEP))));
    }

    private Course course(Kind kind) {
        return courses.computeIfAbsent(kind, any -> new Course(ends.size()));
    }

    private List<Optional<Opening.Seen>> lastOfEachPeriod(OperatedEye eye, Opening opening) {
        List<Optional<Opening.Seen>> last = new ArrayList<>();
        for (int period = 0; period < ends.size(); period++) {
            double from = from(period).value();
            double to = ends.get(period).value();
            last.add(opening.later().stream()
                    .filter(seen -> {
                        long day = ChronoUnit.DAYS.between(eye.operatedOn(), seen.on());
                        return day >= Math.max(1, from) && day < to;
                    })
                    .max(Comparator.comparing(Opening.Seen::on).thenComparing(Opening.Seen::diameter)));
        }
        return last;
    }

    private Days from(int period) {
        return period == 0 ? Days.of(0) : ends.get(period - 1);
    }

    @Override
    public void merge(OpeningStudy other) {
        other.courses.forEach((kind, course) -> course(kind).merge(course));
    }

    /** By technique and planned diameter. */
    public List<OpeningCourse> courses() {
        List<OpeningCourse> all = new ArrayList<>();
        courses.forEach((kind, course) -> all.add(new OpeningCourse(
                kind.technique,
                kind.planned,
                course.made().getCount(),
                Millimetres.of(course.made().getAverage()),
                times(course))));
        return all;
    }

    private List<OpeningCourse.At> times(Course course) {
        List<OpeningCourse.At> times = new ArrayList<>();
        for (int period = 0; period < ends.size(); period++) {
            Course.Period seen = course.period(period);
            if (seen.contraction().getCount() > 0) {
                times.add(new OpeningCourse.At(
                        from(period),
                        ends.get(period),
                        seen.contraction().getCount(),
                        PureNumber.of(seen.contraction().getAverage()),
                        seen.deviation(),
                        PureNumber.of(seen.area().getAverage()),
                        seen.off().getCount() > 0
                                ? Optional.of(Millimetres.of(seen.off().getAverage()))
                                : Optional.empty()));
            }
        }
        return times;
    }
}

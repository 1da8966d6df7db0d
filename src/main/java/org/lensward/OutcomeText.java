package org.lensward;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.outcome.complication.FunnelLimits;
import org.lensward.outcome.complication.ObservedExpected;
import org.lensward.outcome.constant.Proposal;
import org.lensward.outcome.error.ErrorSummary;
import org.lensward.outcome.error.Group;
import org.lensward.outcome.error.PublishedResult;
import org.lensward.outcome.error.Within;
import org.lensward.outcome.opening.OpeningCourse;
import org.lensward.record.FormulaCodes;
import org.lensward.record.outcome.ConstantAdoption;
import org.lensward.record.outcome.OutcomeStudy;

/** Outcomes for a terminal. Names models, surgeons' keys and resources, nobody else. */
final class OutcomeText {

    private final OutcomeStudy study;
    private final StringBuilder text = new StringBuilder();

    private OutcomeText(OutcomeStudy study) {
        this.study = study;
    }

    static String of(OutcomeStudy study) {
        return new OutcomeText(study).whole();
    }

    private String whole() {
        line(
                "%d operations%s, %d counted. Outcome policy %s.",
                study.audit().operations(),
                study.period()
                        .map(each -> " from " + each.from() + " to " + each.to())
                        .orElse(""),
                study.audit().counted(),
                study.policy().version());
        part(
                "Left out",
                study.audit().excluded().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(each -> each.getValue() + "  " + each.getKey()));
        part(
                "Not usable",
                study.unused().counts().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(each -> each.getValue() + "  " + each.getKey() + ": "
                                + named(study.unused().named(each.getKey()), each.getValue())));
        errors();
        part(
                "Constants that the eyes suggest (nothing changes until a clinician adopts one)",
                study.proposals().stream()
                        .filter(ConstantAdoption::isUsual)
                        .filter(each -> each.scope().surgeon().isEmpty() || each.enoughEyes())
                        .map(OutcomeText::proposal));
        ruptures();
        part(
                "Astigmatism after surgery",
                study.astigmatism().stream()
                        .map(each -> String.format(
                                Locale.ROOT,
                                "%d eyes: mean size %.2f D, centroid %.2f D at %.0f degrees",
                                each.eyes(),
                                each.meanMagnitude().value(),
                                each.centroid().magnitude().value(),
                                each.centroid().steepMeridian().value())));
        part("Openings of the capsule", study.openings().stream().flatMap(OutcomeText::opening));
        return text.toString();
    }

    private static String named(List<Evidence> evidence, long all) {
        String first = evidence.stream().limit(3).map(Evidence::resource).collect(Collectors.joining(", "));
        return all > 3 ? first + " and " + (all - 3) + " more" : first;
    }

    private void errors() {
        study.audit().groups().forEach((group, formulas) -> {
            String name = group.equals(Group.EVERYONE) ? "All eyes that count" : words(group);
            long eyes = study.audit().eyes().getOrDefault(group, 0L);
            part(
                    name + ", " + eyes + (eyes == 1 ? " eye" : " eyes"),
                    formulas.isEmpty()
                            ? Stream.of("too few to show")
                            : formulas.stream().map(each -> error(each, group)));
        });
        study.audit().of(Group.EVERYONE).stream().findFirst().ifPresent(this::benchmarks);
    }

    private static String words(Group group) {
        return switch (group.by()) {
            case EVERYONE -> group.name();
            case AXIAL_LENGTH -> "Axial length " + group.name();
            case LENS_MODEL -> group.name();
            case BIOMETRY_METHOD -> "Measured by " + group.name();
            case SURGEON -> group.name();
        };
    }

    private static String error(ErrorSummary each, Group group) {
        String first = String.format(
                Locale.ROOT,
                "%-10s SD %.2f D (%.2f to %.2f), mean %+.2f D, MAE %.2f D, MedAE %.2f D",
                each.formula(),
                each.deviation().value(),
                each.deviationInterval().low().value(),
                each.deviationInterval().high().value(),
                each.mean().value(),
                each.raw().meanAbsolute().value(),
                each.raw().medianAbsolute().value());
        return group.equals(Group.EVERYONE)
                ? first + "; "
                        + each.raw().within().stream().map(OutcomeText::within).collect(Collectors.joining(", "))
                        + "; mean zeroed: "
                        + each.zeroed().within().stream()
                                .map(OutcomeText::share)
                                .collect(Collectors.joining(", "))
                : first;
    }

    private static String within(Within each) {
        return String.format(
                Locale.ROOT,
                "within %s %.1f %% (%.1f to %.1f)",
                each.limit().rounded(),
                100 * each.share().value(),
                100 * each.interval().low().value(),
                100 * each.interval().high().value());
    }

    private static String share(Within each) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * each.share().value());
    }

    private void benchmarks(ErrorSummary best) {
        part(
                "Against what others reached, " + best.formula(),
                PublishedResult.all().stream()
                        .flatMap(published -> best.raw().within().stream()
                                .filter(own -> own.limit().compareTo(published.limit()) == 0)
                                .map(published::compare))
                        .map(each -> String.format(
                                Locale.ROOT,
                                "within %s %.1f %%, %s %.1f %%: %s (%s)",
                                each.published().limit().rounded(),
                                100 * each.own().share().value(),
                                each.published().name(),
                                100 * each.published().share().value(),
                                each.standing()
                                        .toString()
                                        .toLowerCase(Locale.ROOT)
                                        .replace('_', ' '),
                                each.published().source())));
    }

    private static String proposal(Proposal each) {
        String whose = each.scope().surgeon().orElse("all surgeons");
        Optional<String> obstacle = ConstantAdoption.obstacle(each);
        return String.format(
                Locale.ROOT,
                "%s  %s, %s, %s, %s, %d eyes: %s to %s (fit %s; mean error %+.2f D, SD %.2f to %.2f D)%s",
                ConstantAdoption.name(each),
                each.scope().model(),
                each.scope().method(),
                whose,
                each.formula(),
                each.eyes(),
                FormulaCodes.words(each.published()),
                FormulaCodes.words(each.proposed()),
                FormulaCodes.words(each.fitted()),
                each.meanBefore().value(),
                each.deviationBefore().value(),
                each.deviationAfter().value(),
                obstacle.map(why -> "; cannot be adopted: " + why).orElse(""));
    }

    private void ruptures() {
        study.ruptures().ifPresent(all -> {
            part(
                    "Ruptured capsules or vitreous lost",
                    Stream.concat(
                            Stream.of(rupture("all", all)),
                            study.surgeons().entrySet().stream().map(each -> rupture(each.getKey(), each.getValue()))));
            part(
                    "Cumulative sum",
                    study.course().last().stream()
                            .map(last -> String.format(
                                    Locale.ROOT,
                                    "%d operations: worse %.2f of %.2f, better %.2f of %.2f; signals of worse %d, of better %d; expected minus observed %+.1f",
                                    last.number(),
                                    last.worse().value(),
                                    study.course()
                                            .limits()
                                            .orElseThrow()
                                            .worse()
                                            .value(),
                                    last.better().value(),
                                    study.course()
                                            .limits()
                                            .orElseThrow()
                                            .better()
                                            .value(),
                                    study.course().worse(),
                                    study.course().better(),
                                    last.saved().value())));
        });
    }

    private String rupture(String whose, ObservedExpected each) {
        FunnelLimits limits = FunnelLimits.at(
                each.operations(), study.policy().complications().standard().value());
        return String.format(
                Locale.ROOT,
                "%s: %d in %d, expected %.1f, O/E %.2f (%.2f to %.2f), adjusted rate %.2f %%; funnel: warning above %d, alarm above %d: %s",
                whose,
                each.observed(),
                each.operations(),
                each.expected().value(),
                each.ratio().value(),
                each.interval().low().value(),
                each.interval().high().value(),
                100 * each.adjusted().value(),
                limits.upperWarning(),
                limits.upperAlarm(),
                limits.position(Math.round(each.adjusted().value() * each.operations()))
                        .toString()
                        .toLowerCase(Locale.ROOT)
                        .replace('_', ' '));
    }

    private static Stream<String> opening(OpeningCourse course) {
        return course.times().stream()
                .map(at -> String.format(
                        Locale.ROOT,
                        "%s, planned %s, %d made %.2f mm on average: day %.0f to %.0f, %d eyes, contraction %.1f %%",
                        course.technique(),
                        course.planned().rounded(),
                        course.openings(),
                        course.meanMade().value(),
                        at.from().value(),
                        at.to().value(),
                        at.eyes(),
                        at.contraction().value()));
    }

    private void part(String heading, Stream<String> lines) {
        List<String> all = lines.toList();
        if (!all.isEmpty()) {
            line("%s", heading);
            all.forEach(each -> line("  %s", each));
        }
    }

    private void line(String format, Object... words) {
        text.append(String.format(Locale.ROOT, format, words)).append(System.lineSeparator());
    }
}

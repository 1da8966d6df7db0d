package org.lensward.outcome;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.lensward.optics.ThinEye;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.PowerMatrix;
import org.lensward.outcome.OutcomePolicy.RefractionPolicy;
import org.lensward.outcome.Refraction.Cylinder;
import org.lensward.outcome.Refraction.Form;
import org.lensward.quantity.Days;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * Which refraction of an operated eye counts: a subjective one before an objective one, inside the window, nearest to the preferred day.
 * Plus and minus cylinders come to one form; the vertex distance is taken to the 12 mm of the predictions.
 */
final class RefractionChoice {

    private final RefractionPolicy policy;

    RefractionChoice(RefractionPolicy policy) {
        this.policy = policy;
    }

    /** The refraction, or why there is none. */
    sealed interface Choice {
        record Chosen(ChosenRefraction refraction) implements Choice {}

        record None(Exclusion reason) implements Choice {}
    }

    Choice choose(OperatedEye eye) {
        List<Refraction> left = eye.after().refractions();
        if (left.isEmpty()) {
            return new Choice.None(Exclusion.NO_REFRACTION);
        }
        for (Sieve sieve : sieves(eye)) {
            left = left.stream().filter(sieve.keeps()).toList();
            if (left.isEmpty()) {
                return new Choice.None(sieve.otherwise());
            }
        }
        return bestOf(left, eye);
    }

    private record Sieve(Predicate<Refraction> keeps, Exclusion otherwise) {}

    private List<Sieve> sieves(OperatedEye eye) {
        LocalDate surgery = eye.operatedOn();
        LocalDate first = policy.earliest().value().after(surgery);
        LocalDate last = policy.latest().value().after(surgery);
        Optional<LocalDate> exchange = eye.after().exchangedOn();
        return List.of(
                new Sieve(each -> each.eye() == eye.side(), Exclusion.REFRACTION_OF_THE_OTHER_EYE),
                new Sieve(each -> each.on().isAfter(surgery), Exclusion.REFRACTION_BEFORE_SURGERY),
                new Sieve(each -> !each.on().isBefore(first), Exclusion.REFRACTED_TOO_EARLY),
                new Sieve(each -> !each.on().isAfter(last), Exclusion.REFRACTED_TOO_LATE),
                new Sieve(each -> exchange.map(day -> each.on().isBefore(day)).orElse(true), Exclusion.LENS_EXCHANGED),
                new Sieve(
                        each -> policy.objectiveCounts() || each.way() == Refraction.Way.SUBJECTIVE,
                        Exclusion.OBJECTIVE_ONLY));
    }

    private Choice bestOf(List<Refraction> candidates, OperatedEye eye) {
        LocalDate preferred = policy.preferred().value().after(eye.operatedOn());
        List<Refraction> ranked = candidates.stream().sorted(ranking(preferred)).toList();
        return ranked.stream()
                .filter(each -> fault(each).isEmpty())
                .findFirst()
                .<Choice>map(best -> new Choice.Chosen(moved(best, eye.operatedOn())))
                .orElseGet(() -> new Choice.None(fault(ranked.get(0)).orElseThrow()));
    }

    /** The last keys only make the choice the same whatever the order in which the record tells them. */
    private static Comparator<Refraction> ranking(LocalDate preferred) {
        return Comparator.comparing(Refraction::way)
                .thenComparing(each -> Math.abs(ChronoUnit.DAYS.between(preferred, each.on())))
                .thenComparing(each -> each.vertexDistance().isEmpty())
                .thenComparing(Refraction::on)
                .thenComparing(Refraction::sphere)
                .thenComparing(Refraction::toString);
    }

    private Optional<Exclusion> fault(Refraction refraction) {
        if (refraction.cylinder().isEmpty()) {
            return Optional.of(Exclusion.CYLINDER_NOT_TOLD);
        }
        Cylinder cylinder = refraction.cylinder().get();
        if (cylinder.form() == Form.NOT_TOLD && cylinder.power().value() != 0) {
            return Optional.of(Exclusion.CYLINDER_FORM_NOT_TOLD);
        }
        if (refraction.vertexDistance().isEmpty()
                && strongest(refraction) >= policy.vertexMattersFrom().value().value()) {
            return Optional.of(Exclusion.VERTEX_NOT_TOLD);
        }
        if (refraction.acuity().isEmpty()) {
            return policy.acuityNeeded() ? Optional.of(Exclusion.ACUITY_NOT_TOLD) : Optional.empty();
        }
        boolean poor = refraction
                        .acuity()
                        .get()
                        .decimal()
                        .compareTo(policy.poorestAcuity().value())
                < 0;
        return poor ? Optional.of(Exclusion.ACUITY_TOO_POOR) : Optional.empty();
    }

    private static double strongest(Refraction refraction) {
        double sphere = refraction.sphere().value();
        return Math.max(Math.abs(sphere), Math.abs(sphere + signedCylinder(refraction)));
    }

    private ChosenRefraction moved(Refraction written, LocalDate surgery) {
        double cylinder = signedCylinder(written);
        Optional<Degrees> axis = written.cylinder().flatMap(Cylinder::axis);
        // The spherical equivalent does not depend on the axis, so that any will do where none was told.
        PowerMatrix asWritten = PowerMatrix.of(
                Dioptres.of(written.sphere().value() + cylinder / 2), correcting(cylinder, axis.orElse(Degrees.of(0))));
        Millimetres vertex =
                written.vertexDistance().orElse(policy.usualVertex().value());
        PowerMatrix atPlane = asWritten.travelledInAir(vertex.minus(ThinEye.VERTEX_DISTANCE));
        Optional<Astigmatism> astigmatism =
                axis.isPresent() || cylinder == 0 ? Optional.of(atPlane.astigmatism()) : Optional.empty();
        Days after = Days.of(ChronoUnit.DAYS.between(surgery, written.on()));
        return new ChosenRefraction(written, atPlane.mean(), astigmatism, after);
    }

    /** Along the axis a minus cylinder leaves the sphere, the more positive power; a plus cylinder does so across it. */
    private static Astigmatism correcting(double cylinder, Degrees axis) {
        double meridian = cylinder > 0 ? axis.value() + 90 : axis.value();
        return Astigmatism.of(Dioptres.of(Math.abs(cylinder)), Degrees.of(meridian));
    }

    private static double signedCylinder(Refraction refraction) {
        return refraction
                .cylinder()
                .map(each -> each.form() == Form.MINUS
                        ? -each.power().value()
                        : each.power().value())
                .orElse(0.0);
    }
}

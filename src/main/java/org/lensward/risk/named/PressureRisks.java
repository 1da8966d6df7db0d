package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.CHOROID_MAY_BLEED;
import static org.lensward.finding.FindingCode.PRESSURE_HIGH;
import static org.lensward.finding.FindingCode.PRESSURE_RAISED;
import static org.lensward.finding.FindingCode.PRESSURE_SPIKE_LIKELY;

import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.risk.RiskPolicy;
import org.lensward.risk.preparation.FrontPolicy;

/**
 * Risks of the pressure inside the eye. Bleeding behind the choroid during the operation: 0.03 %, odds ratios of Stewart et al., National
 * Ophthalmology Database report 12, Eye 2023, 709,083 operations (abstract read): raised pressure 3.7, glaucoma 1.7, age 90 or more 6.7.
 */
final class PressureRisks {

    static final double BLEEDING_PRESSURE = 3.7;
    static final double BLEEDING_GLAUCOMA = 1.7;
    static final double BLEEDING_AGE = 6.7;

    private final RiskPolicy policy;
    private final FrontPolicy front;

    PressureRisks(RiskPolicy policy, FrontPolicy front) {
        this.policy = policy;
        this.front = front;
    }

    Stream<Finding> name(Subject subject) {
        Optional<Measured<MillimetresOfMercury>> raised = subject.eye()
                .examination()
                .pressure()
                .filter(pressure ->
                        pressure.value().compareTo(front.raisedPressure().value()) > 0);
        return Stream.of(raised(raised), spike(subject, raised), bleeding(subject, raised))
                .flatMap(each -> each);
    }

    private Stream<Finding> raised(Optional<Measured<MillimetresOfMercury>> raised) {
        return raised.stream()
                .map(pressure ->
                        pressure.value().compareTo(policy.highPressure().value()) > 0
                                ? Finding.of(
                                        PRESSURE_HIGH,
                                        pressure.evidence(),
                                        pressure.value(),
                                        policy.highPressure().value())
                                : Finding.of(
                                        PRESSURE_RAISED,
                                        pressure.evidence(),
                                        pressure.value(),
                                        front.raisedPressure().value()));
    }

    private static Stream<Finding> spike(Subject subject, Optional<Measured<MillimetresOfMercury>> raised) {
        Grounds grounds = new Grounds().add(subject.affirmed(Sign.GLAUCOMA, Sign.PRESSURE_SPIKE_BEFORE));
        raised.ifPresent(pressure -> grounds.add(pressure.value().toString(), pressure.evidence()));
        return grounds.name(PRESSURE_SPIKE_LIKELY);
    }

    private static Stream<Finding> bleeding(Subject subject, Optional<Measured<MillimetresOfMercury>> raised) {
        Grounds grounds = new Grounds();
        raised.ifPresent(pressure ->
                grounds.add("pressure " + pressure.value() + " x" + BLEEDING_PRESSURE, pressure.evidence()));
        subject.eye().history().affirmed(Sign.GLAUCOMA).ifPresent(glaucoma -> grounds.add(glaucoma, BLEEDING_GLAUCOMA));
        subject.age()
                .filter(age -> age >= 90)
                .ifPresent(age -> grounds.add(
                        "age " + age + " x" + BLEEDING_AGE,
                        subject.person().evidence().at("birthDate")));
        return grounds.name(CHOROID_MAY_BLEED);
    }
}

package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.DETACHMENT_LIKELIER;
import static org.lensward.finding.FindingCode.FUNDUS_NOT_SEEN;
import static org.lensward.finding.FindingCode.MACULA_MAY_SWELL;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;

/**
 * Risks of the retina.
 *
 * <p>Macular oedema within 90 days: 1.17 % in eyes without any of these; relative risks of Chu et al., Ophthalmology 2016;123:316, 81,984
 * eyes (abstract read; those of diabetes and retinopathy from memory). Detachment: hazard ratios of Petousis et al., Br J Ophthalmol
 * 2016;100:1461, 18,065 eyes (abstract read), against eyes of 23 to 25 mm and ages of 60 to 80. The ratios are of different models and
 * are never multiplied with one another.
 */
final class RetinaRisks {

    static final Map<Sign, Double> MACULAR_OEDEMA = Map.of(
            Sign.EPIRETINAL_MEMBRANE, 5.60,
            Sign.RETINAL_VEIN_OCCLUSION, 4.47,
            Sign.UVEITIS, 2.88,
            Sign.DIABETIC_RETINOPATHY, 6.23,
            Sign.DIABETES, 1.80);

    static final double DETACHMENT_YOUNG = 5.12;
    static final double DETACHMENT_LONG = 3.98;

    /** Retinopathy has diabetes in it. */
    private static final List<Sign> MACULA = List.of(
            Sign.DIABETIC_RETINOPATHY,
            Sign.EPIRETINAL_MEMBRANE,
            Sign.RETINAL_VEIN_OCCLUSION,
            Sign.UVEITIS,
            Sign.DIABETES);

    private RetinaRisks() {}

    static Stream<Finding> name(Subject subject) {
        return Stream.of(
                        new Grounds()
                                .add(subject.affirmed(Sign.FUNDUS_NOT_SEEN))
                                .name(FUNDUS_NOT_SEEN),
                        macula(subject),
                        detachment(subject))
                .flatMap(each -> each);
    }

    private static Stream<Finding> macula(Subject subject) {
        boolean retinopathy =
                subject.eye().history().affirmed(Sign.DIABETIC_RETINOPATHY).isPresent();
        Grounds grounds = new Grounds();
        for (Sign sign : MACULA) {
            if (sign != Sign.DIABETES || !retinopathy) {
                subject.eye()
                        .history()
                        .affirmed(sign)
                        .ifPresent(entry -> grounds.add(entry, MACULAR_OEDEMA.getOrDefault(sign, 1.0)));
            }
        }
        return grounds.name(MACULA_MAY_SWELL);
    }

    private static Stream<Finding> detachment(Subject subject) {
        Grounds grounds = new Grounds();
        subject.age()
                .filter(age -> age < 60)
                .ifPresent(age -> grounds.add(
                        "age " + age + " x" + DETACHMENT_YOUNG,
                        subject.person().evidence().at("birthDate")));
        subject.eye()
                .biometry()
                .map(Biometry::axialLength)
                .filter(length -> length.value().value() > 25)
                .ifPresent(length -> grounds.add(
                        "axial length " + length.value().rounded() + " x" + DETACHMENT_LONG, length.evidence()));
        return grounds.name(DETACHMENT_LIKELIER);
    }
}

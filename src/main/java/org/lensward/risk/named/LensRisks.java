package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.CAPSULE_MAY_TEAR_OUT;
import static org.lensward.finding.FindingCode.CAPSULE_OPEN_BEHIND;
import static org.lensward.finding.FindingCode.CHAMBER_SHALLOW;
import static org.lensward.finding.FindingCode.LENS_WHITE_OR_BROWN;
import static org.lensward.finding.FindingCode.ZONULES_WEAK;

import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.risk.preparation.FrontPolicy;

/** Risks of the natural lens, what it hangs by and the room before it. */
final class LensRisks {

    private final FrontPolicy policy;

    LensRisks(FrontPolicy policy) {
        this.policy = policy;
    }

    Stream<Finding> name(Subject subject) {
        return Stream.of(
                        new Grounds()
                                .add(subject.affirmed(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS))
                                .name(LENS_WHITE_OR_BROWN),
                        pressure(subject),
                        new Grounds()
                                .add(subject.affirmed(Sign.POSTERIOR_POLAR_CATARACT))
                                .name(CAPSULE_OPEN_BEHIND),
                        zonules(subject),
                        chamber(subject))
                .flatMap(each -> each);
    }

    /** Until someone has looked, a white lens may be swollen. */
    private static Stream<Finding> pressure(Subject subject) {
        Optional<Entry> swollen = subject.eye().history().affirmed(Sign.SWOLLEN_LENS);
        if (swollen.isPresent()) {
            return Stream.of(tears(swollen.get(), "is swollen"));
        }
        return subject.eye().history().unknown(Sign.SWOLLEN_LENS)
                ? subject.eye().history().affirmed(Sign.BROWN_OR_WHITE_LENS).stream()
                        .map(white -> tears(white, "may be swollen"))
                : Stream.empty();
    }

    private static Finding tears(Entry entry, String how) {
        return Finding.of(CAPSULE_MAY_TEAR_OUT, entry.evidence(), how, entry.words());
    }

    private static Stream<Finding> zonules(Subject subject) {
        Grounds grounds = new Grounds()
                .add(subject.affirmed(
                        Sign.PHACODONESIS,
                        Sign.LENS_DISLOCATION,
                        Sign.PSEUDOEXFOLIATION,
                        Sign.VITRECTOMY,
                        Sign.EYE_INJURY,
                        Sign.HIGH_MYOPIA,
                        Sign.MARFAN_SYNDROME));
        subject.eye()
                .examination()
                .zonuleLoss()
                .filter(loss -> loss.value().value() > 0)
                .ifPresent(loss -> grounds.add(loss.value().value() + " clock hours without zonule", loss.evidence()));
        return grounds.name(ZONULES_WEAK);
    }

    private Stream<Finding> chamber(Subject subject) {
        Grounds grounds = new Grounds();
        subject.eye()
                .biometry()
                .map(Biometry::details)
                .flatMap(details -> details.anteriorChamberDepth())
                .filter(depth -> depth.value().compareTo(policy.shallowChamber().value()) < 0)
                .ifPresent(depth -> grounds.add(depth.value().rounded(), depth.evidence()));
        return grounds.name(CHAMBER_SHALLOW);
    }
}

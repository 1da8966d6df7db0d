package org.lensward.risk.preparation;

import java.util.Optional;
import org.lensward.eye.Measured;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.TheatreItem;

/** How a weakly held lens is supported: by a plain ring, or sutured where a ring no longer holds. */
final class ZonuleCare implements Step {

    private static final String WHOLE =
            " Only inside a continuous opening and with the posterior capsule whole;" + " otherwise no ring.";

    private final SupportPolicy policy;

    ZonuleCare(SupportPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Optional<Measured<PureNumber>> lost = lost(facts);
        Draft draft = new Draft(Topic.ZONULES).signs(facts, policy.weak());
        lost.ifPresent(hours -> draft.because(words(hours), hours.evidence()));
        boolean weak = draft.hasReasons();
        draft.signs(facts, policy.suspect());
        draft.signs(facts, policy.progressive());
        if (facts.examination().zonuleLoss().isEmpty()) {
            draft.ask("clock hours of zonule missing (dilated)");
        }
        boolean sutured = lost.filter(this::beyondRing).isPresent()
                || weak && !facts.affirmed(policy.progressive()).isEmpty();
        sheet.add(
                draft,
                action(weak, sutured, draft),
                policy.source() + "; " + policy.ringHours().source());
    }

    private String action(boolean weak, boolean sutured, Draft draft) {
        if (sutured) {
            draft.bring(TheatreItem.SUTURED_RING_SEGMENT)
                    .bring(TheatreItem.CAPSULE_HOOKS)
                    .bring(TheatreItem.ANTERIOR_VITRECTOMY_SET);
            return "Capsule hooks, then a sutured ring segment; a plain ring does not hold this bag." + WHOLE;
        }
        draft.bring(TheatreItem.CAPSULAR_TENSION_RING);
        if (weak) {
            draft.bring(TheatreItem.CAPSULE_HOOKS).bring(TheatreItem.ANTERIOR_VITRECTOMY_SET);
            return "Support the bag with a capsular tension ring, hooks at hand; low bottle, slow flow." + WHOLE;
        }
        return "The zonules may be weak: capsular tension ring at hand." + WHOLE;
    }

    private boolean beyondRing(Measured<PureNumber> hours) {
        return hours.value().compareTo(policy.ringHours().value()) > 0;
    }

    static String words(Measured<PureNumber> hours) {
        return Figures.of(hours.value()) + " clock hours of zonule missing";
    }

    /** Zonule seen to be missing; nought hours are none. */
    static Optional<Measured<PureNumber>> lost(Facts facts) {
        return facts.examination().zonuleLoss().filter(hours -> hours.value().value() > 0);
    }
}

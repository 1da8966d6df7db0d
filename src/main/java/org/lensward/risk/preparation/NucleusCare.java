package org.lensward.risk.preparation;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.eye.Sign;
import org.lensward.risk.TheatreItem;

/** How a hard nucleus may be taken apart, and what each way needs. */
final class NucleusCare implements Step {

    private static final String SOURCE = "common practice, no source";

    private final SupportPolicy support;
    private final FrontPolicy front;

    NucleusCare(SupportPolicy support, FrontPolicy front) {
        this.support = support;
        this.front = front;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.NUCLEUS).signs(facts, List.of(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS));
        facts.affirmed(Sign.POSTERIOR_POLAR_CATARACT).ifPresent(draft::because);
        if (!draft.hasReasons()) {
            // The topic of the white lens asks already.
            return;
        }
        List<NucleusOption> options = options(facts);
        draft.bring(TheatreItem.SECOND_INSTRUMENT);
        boolean loop = options.stream().anyMatch(NucleusCare::loopMayBeUsed);
        if (loop && sheet.choose(Purpose.COHESIVE_VISCOELASTIC, draft).agent().isPresent()) {
            draft.bring(TheatreItem.NUCLEUS_LOOP);
        }
        String polar = facts.has(Sign.POSTERIOR_POLAR_CATARACT)
                ? "The posterior capsule may be open: no fluid under the capsule, do not turn the nucleus. "
                : "";
        sheet.add(draft, polar + options.stream().map(NucleusCare::words).collect(Collectors.joining(" ")), SOURCE);
    }

    private static boolean loopMayBeUsed(NucleusOption option) {
        return option.method() == NucleusMethod.LOOP && option.judgement().verdict() != Verdict.DOES_NOT_SUIT;
    }

    private static String words(NucleusOption option) {
        Judgement judgement = option.judgement();
        StringBuilder words = new StringBuilder(option.method().code())
                .append(": ")
                .append(judgement.verdict().code().replace('-', ' '));
        if (!judgement.reasons().isEmpty()) {
            words.append(" (").append(String.join(", ", judgement.reasons())).append(')');
        }
        if (!judgement.unknown().isEmpty()) {
            words.append("; unknown: ").append(String.join(", ", judgement.unknown()));
        }
        return words.append('.').toString();
    }

    List<NucleusOption> options(Facts facts) {
        return Arrays.stream(NucleusMethod.values())
                .map(method -> new NucleusOption(method, weigh(method, facts).judgement()))
                .toList();
    }

    private Weighing weigh(NucleusMethod method, Facts facts) {
        Weighing weighing = new Weighing();
        return switch (method) {
            case CHOP -> lost(weighing, facts);
            case DIVIDE ->
                lost(weighing, facts)
                        .doubt(facts, support.weak())
                        .doubt(facts, support.suspect())
                        .doubt(facts, Set.of(Sign.POSTERIOR_POLAR_CATARACT));
            case LOOP -> loop(weighing, facts);
        };
    }

    private static Weighing lost(Weighing weighing, Facts facts) {
        ZonuleCare.lost(facts).ifPresent(hours -> weighing.doubt(ZonuleCare.words(hours), hours.evidence()));
        return weighing;
    }

    /** The loop opens inside the bag: it needs zonules, room, a whole capsule and a wide continuous opening. */
    private Weighing loop(Weighing weighing, Facts facts) {
        weighing.forbid(facts, support.weak())
                .forbid(facts, Set.of(Sign.POSTERIOR_POLAR_CATARACT))
                .doubt(facts, support.suspect())
                .below("anterior chamber depth", facts.chamberDepth(), front.shallowChamber())
                .below(
                        "capsule opening (continuous, once it is made)",
                        facts.examination().openingDiameter(),
                        support.loopOpening());
        if (facts.examination().zonuleLoss().isEmpty()) {
            weighing.ask("clock hours of zonule missing");
        }
        ZonuleCare.lost(facts).ifPresent(hours -> weighing.forbid(ZonuleCare.words(hours), hours.evidence()));
        return weighing.ask("room for " + Figures.of(support.loopDiameter().value())
                + " inside the bag (white to white is not read from the record)");
    }
}

package org.lensward.board.eye;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.plan.TheatrePlan;
import org.lensward.risk.Bring;
import org.lensward.risk.opening.DyePlan;
import org.lensward.risk.opening.OpeningPlan;
import org.lensward.risk.opening.OpeningSize;
import org.lensward.risk.preparation.AnaestheticChoice;
import org.lensward.risk.preparation.Precaution;

/**
 * What the theatre does and has at hand for one eye.
 *
 * @param opening how the capsule is opened, in a line; empty where nothing is proposed
 * @param size how wide, with its overlap
 * @param weighed every technique with its verdict
 * @param dye in a line
 * @param anaesthetic in a line
 * @param anaestheticNotes what was refused before it, and what is unknown
 * @param precautions by topic
 * @param bring what has to lie ready
 */
record TheatrePart(
        String opening,
        String size,
        List<String> weighed,
        String dye,
        String anaesthetic,
        List<String> anaestheticNotes,
        List<Care> precautions,
        List<String> bring) {

    /**
     * One precaution.
     *
     * @param topic what it is about
     * @param action what is done
     * @param because why, or what has to be found out
     * @param where the facts behind it
     */
    record Care(String topic, String action, String because, List<Shown> where) {}

    static TheatrePart of(TheatrePlan theatre) {
        Optional<OpeningPlan> opening = theatre.opening();
        Optional<AnaestheticChoice> numb = theatre.preparation().map(each -> each.anaesthetic());
        return new TheatrePart(
                opening.flatMap(OpeningPlan::technique)
                        .map(each -> each.toString())
                        .orElse("none proposed"),
                opening.flatMap(OpeningPlan::size).map(TheatrePart::size).orElse(""),
                opening.stream()
                        .flatMap(each -> each.views().stream())
                        .map(view ->
                                view.technique() + ": " + view.verdict().code().replace('-', ' '))
                        .toList(),
                opening.flatMap(OpeningPlan::dye).map(TheatrePart::dye).orElse("no dye"),
                numb.map(TheatrePart::words).orElse("not planned"),
                numb.map(TheatrePart::notes).orElse(List.of()),
                theatre.preparation().stream()
                        .flatMap(each -> each.precautions().stream())
                        .map(TheatrePart::care)
                        .toList(),
                theatre.bring().things().stream().map(TheatrePart::thing).toList());
    }

    private static String size(OpeningSize size) {
        return size.diameter().rounded() + " wide, healing to " + size.healed().rounded() + "; on an optic of "
                + size.asMade().optic().rounded() + " the least overlap is "
                + size.asMade().least().rounded() + " with its centre off by "
                + size.asMade().decentration().rounded();
    }

    private static String dye(DyePlan dye) {
        return dye.preparation() + " for " + dye.preparation().contact().value()
                + dye.protocol().map(each -> ", under the protocol " + each).orElse("");
    }

    private static String words(AnaestheticChoice choice) {
        if (choice instanceof AnaestheticChoice.Chosen chosen) {
            return chosen.kind().toString();
        }
        return choice instanceof AnaestheticChoice.Undecided open
                ? "undecided, leaning to " + open.leaning()
                : "none left by the policy: the anaesthetist decides";
    }

    private static List<String> notes(AnaestheticChoice choice) {
        Stream<String> unknown = choice instanceof AnaestheticChoice.Undecided open
                ? open.unknown().stream().map(each -> "to find out: " + each)
                : Stream.empty();
        return Stream.concat(unknown, choice.refused().stream().map(Object::toString))
                .toList();
    }

    private static Care care(Precaution precaution) {
        List<String> said = Stream.concat(
                        precaution.reasons().stream(),
                        precaution.unknown().stream().map(each -> "to find out: " + each))
                .toList();
        return new Care(
                precaution.topic().code().replace('-', ' '),
                precaution.action(),
                String.join("; ", said),
                precaution.evidence().stream()
                        .map(each -> Shown.of(each.toString(), each))
                        .distinct()
                        .toList());
    }

    private static String thing(Bring bring) {
        return bring.count() + " x " + bring.item() + (bring.particulars().isEmpty() ? "" : ": " + bring.particulars());
    }
}

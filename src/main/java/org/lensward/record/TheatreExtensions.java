package org.lensward.record;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.PositiveIntType;
import org.hl7.fhir.r4.model.Procedure;
import org.lensward.finding.Evidence;
import org.lensward.plan.TheatrePlan;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.opening.DyePlan;
import org.lensward.risk.opening.ImplantAdvice;
import org.lensward.risk.opening.OpeningJudgement;
import org.lensward.risk.opening.OpeningPlan;
import org.lensward.risk.opening.OpeningTechnique;
import org.lensward.risk.opening.Overlap;
import org.lensward.risk.opening.Reason;
import org.lensward.risk.opening.TechniqueView;
import org.lensward.risk.preparation.AnaestheticChoice;
import org.lensward.risk.preparation.NucleusOption;
import org.lensward.risk.preparation.Precaution;
import org.lensward.risk.preparation.Suitability;

/** What the theatre does and has at hand for one eye, as extensions of its plan. */
final class TheatreExtensions {

    private TheatreExtensions() {}

    static List<Extension> of(TheatrePlan theatre) {
        return Stream.of(
                        theatre.opening().stream().flatMap(TheatreExtensions::opening),
                        theatre.asMade().map(TheatreExtensions::asMade).stream(),
                        theatre.preparation().stream().map(each -> anaesthetic(each.anaesthetic())),
                        theatre.preparation().stream()
                                .flatMap(each -> each.precautions().stream())
                                .map(TheatreExtensions::precaution),
                        theatre.preparation().stream()
                                .flatMap(each -> each.nucleus().stream())
                                .map(TheatreExtensions::nucleus),
                        theatre.preparation().stream()
                                .flatMap(each -> each.lensTypes().stream())
                                .map(TheatreExtensions::suitability),
                        theatre.bring().things().stream().map(TheatreExtensions::bring))
                .flatMap(each -> each)
                .toList();
    }

    /** The things to bring that a stored plan asks for. What an article contains is not stored: it was weighed when the plan was made. */
    static List<Bring> brought(Procedure plan) {
        return plan.getExtensionsByUrl(Systems.extension("to-bring")).stream()
                .flatMap(each -> item(each).stream()
                        .map(item -> new Bring(
                                item,
                                ((PositiveIntType)
                                                each.getExtensionByUrl("count").getValue())
                                        .getValue(),
                                text(each, "particulars"),
                                Set.of(),
                                text(each, "reason"))))
                .toList();
    }

    private static Optional<TheatreItem> item(Extension bring) {
        String code = Codes.in((CodeableConcept) bring.getExtensionByUrl("item").getValue(), Systems.THEATRE_ITEM)
                .orElse("");
        return Stream.of(TheatreItem.values())
                .filter(item -> item.code().equals(code))
                .findFirst();
    }

    private static String text(Extension whole, String part) {
        return Optional.ofNullable(whole.getExtensionString(part)).orElse("");
    }

    private static Stream<Extension> opening(OpeningPlan opening) {
        return Stream.of(
                        opening.technique().map(technique -> opening(technique, opening)).stream(),
                        opening.views().stream().map(TheatreExtensions::view),
                        opening.dye().map(TheatreExtensions::dye).stream())
                .flatMap(each -> each);
    }

    private static Extension opening(OpeningTechnique technique, OpeningPlan opening) {
        Parts parts = Parts.of("planned-opening")
                .concept("technique", Systems.OPENING_TECHNIQUE, technique.code(), technique.toString());
        opening.size().ifPresent(size -> parts.quantity("diameter", Quantities.hundredths(size.diameter()))
                .quantity("healed-diameter", Quantities.hundredths(size.healed()))
                .quantity("least-overlap", Quantities.hundredths(size.asMade().least())));
        return parts.texts("step", opening.steps())
                .text("caveat", opening.caveat())
                .whole();
    }

    private static Extension view(TechniqueView view) {
        List<Evidence> evidence = view.reasons().stream()
                .flatMap(each -> each.evidence().stream())
                .toList();
        return Parts.of("technique-weighed")
                .concept(
                        "technique",
                        Systems.OPENING_TECHNIQUE,
                        view.technique().code(),
                        view.technique().toString())
                .code("verdict", view.verdict().code())
                .texts("reason", view.reasons().stream().map(Reason::words).toList())
                .evidence(evidence)
                .whole();
    }

    private static Extension dye(DyePlan dye) {
        var preparation = dye.preparation();
        return Parts.of("planned-dye")
                .concept(
                        "agent",
                        Systems.DYE_AGENT,
                        preparation.agent().code(),
                        preparation.agent().toString())
                .quantity(
                        "concentration",
                        Quantities.percent(preparation.concentration().value()))
                .quantity("contact", Quantities.seconds(preparation.contact().value()))
                .number(
                        "times-usual",
                        BigDecimal.valueOf(dye.timesUsual().value()).setScale(2, RoundingMode.HALF_EVEN))
                .text("wash-out", preparation.washOut())
                .text("coat", preparation.coat())
                .text("protocol", dye.protocol().orElse(""))
                .whole();
    }

    private static Extension asMade(OpeningJudgement judgement) {
        Parts parts = Parts.of("opening-as-made");
        judgement
                .overlap()
                .map(Overlap::least)
                .map(Quantities::hundredths)
                .ifPresent(least -> parts.quantity("least-overlap", least));
        return parts.texts(
                        "advice",
                        judgement.advice().stream().map(ImplantAdvice::words).toList())
                .whole();
    }

    private static Extension anaesthetic(AnaestheticChoice choice) {
        Parts parts = Parts.of("planned-anaesthetic");
        Optional.of(choice)
                .flatMap(each -> each instanceof AnaestheticChoice.Chosen chosen
                        ? Optional.of(chosen.kind())
                        : each instanceof AnaestheticChoice.Undecided undecided
                                ? Optional.of(undecided.leaning())
                                : Optional.empty())
                .ifPresent(kind -> parts.concept("anaesthetic", Systems.ANAESTHETIC, kind.code(), kind.toString()));
        if (choice instanceof AnaestheticChoice.Undecided undecided) {
            parts.texts("undecided", undecided.unknown());
        }
        return parts.texts(
                        "refused",
                        choice.refused().stream().map(Object::toString).toList())
                .whole();
    }

    private static Extension precaution(Precaution precaution) {
        return Parts.of("precaution")
                .concept("topic", Systems.PRECAUTION_TOPIC, precaution.topic().code(), words(precaution.topic()))
                .text("action", precaution.action())
                .texts("reason", precaution.reasons())
                .texts("unknown", precaution.unknown())
                .evidence(precaution.evidence())
                .text("source", precaution.source())
                .whole();
    }

    private static Extension nucleus(NucleusOption option) {
        return Parts.of("nucleus-option")
                .concept("method", Systems.NUCLEUS_METHOD, option.method().code(), words(option.method()))
                .code("verdict", option.judgement().verdict().code())
                .texts("reason", option.judgement().reasons())
                .texts("unknown", option.judgement().unknown())
                .whole();
    }

    private static Extension suitability(Suitability suitability) {
        return Parts.of("lens-suitability")
                .concept(
                        "type",
                        Systems.LENS_TYPE,
                        suitability.type().code(),
                        suitability.type().toString())
                .code("verdict", suitability.judgement().verdict().code())
                .texts("reason", suitability.judgement().reasons())
                .texts("unknown", suitability.judgement().unknown())
                .evidence(suitability.judgement().evidence())
                .whole();
    }

    private static Extension bring(Bring bring) {
        return Parts.of("to-bring")
                .concept(
                        "item",
                        Systems.THEATRE_ITEM,
                        bring.item().code(),
                        bring.item().toString())
                .count("count", bring.count())
                .text("particulars", bring.particulars())
                .text("reason", bring.reason())
                .whole();
    }

    private static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

package org.lensward.record;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.DecimalType;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.RiskAssessment.RiskAssessmentStatus;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.risk.RiskFactor;
import org.lensward.risk.RuptureRisk;

/** The capsule-rupture risk as a RiskAssessment. FHIR's probability is a percentage. */
final class RuptureAssessment {

    /** One of the two is said beside every figure. */
    private static final String CAVEAT =
            "A figure of a 2009 national series, not recalibrated; rates have fallen since. Put this unit's own"
                    + " rate into the policy.";

    private static final String OWN =
            "The odds ratios of a 2009 national series on this unit's own rate. An estimate for eyes like this one, not for this eye.";

    private static final String FACTOR = Systems.extension("odds-factor");

    private RuptureAssessment() {}

    static RiskAssessment of(PlanContext context, RuptureRisk risk) {
        RiskAssessment assessment = new RiskAssessment();
        assessment.setId(context.key().id("capsule-rupture"));
        assessment.getMeta().addProfile(Systems.profile("capsule-rupture-risk"));
        assessment.addExtension(PlanResources.EYE, context.eye());
        risk.factors().forEach(factor -> assessment.addExtension(factor(factor)));
        assessment.addIdentifier(context.key().identifier());
        assessment.setBasedOn(context.booking());
        assessment.setStatus(RiskAssessmentStatus.PRELIMINARY);
        assessment.setMethod(
                Codes.concept(Systems.RISK_MODEL, "narendran-2009", "Narendran et al., Eye 2009;23:31-37"));
        assessment.setCode(Codes.concept(
                Systems.RISK_OUTCOME, "posterior-capsule-rupture", "Posterior capsule rupture or vitreous loss"));
        assessment.setSubject(context.patient());
        assessment.setOccurrence(context.operation());
        assessment.setBasis(PlanContext.references(
                risk.factors().stream().map(RiskFactor::evidence).toList()));
        assessment
                .addPrediction()
                .setOutcome(assessment.getCode().copy())
                .setProbability(new DecimalType(percent(risk)))
                .setRationale(rationale(risk));
        assessment.addNote().setText(risk.recalibrated() ? OWN : CAVEAT);
        return assessment;
    }

    /** Which fact of which resource multiplied the odds by how much. */
    private static Extension factor(RiskFactor factor) {
        Extension shown = new Extension(FACTOR);
        shown.addExtension("words", new StringType(factor.words()));
        shown.addExtension("odds-ratio", new DecimalType(factor.oddsRatio().value()));
        shown.addExtension("evidence", new Reference(factor.evidence().resource()));
        if (!factor.evidence().field().isEmpty()) {
            shown.addExtension("element", new StringType(factor.evidence().field()));
        }
        return shown;
    }

    private static BigDecimal percent(RuptureRisk risk) {
        return BigDecimal.valueOf(risk.probability().value() * 100).setScale(2, RoundingMode.HALF_EVEN);
    }

    private static String rationale(RuptureRisk risk) {
        String factors = risk.factors().stream()
                .map(factor -> String.format(
                        Locale.ROOT,
                        "%s x%s",
                        factor.words(),
                        factor.oddsRatio().value()))
                .collect(Collectors.joining(", "));
        String known = factors.isEmpty() ? "The reference eye." : "Odds multiplied by: " + factors + ".";
        return risk.unknown().isEmpty() ? known : known + " Not recorded: " + String.join(", ", risk.unknown()) + ".";
    }
}

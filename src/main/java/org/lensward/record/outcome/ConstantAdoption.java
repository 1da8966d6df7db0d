package org.lensward.record.outcome;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Date;
import java.util.Optional;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceDefinitionPropertyComponent;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Provenance.ProvenanceEntityRole;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.eye.BiometryMethod;
import org.lensward.outcome.constant.Adoption;
import org.lensward.outcome.constant.Aim;
import org.lensward.outcome.constant.Proposal;
import org.lensward.record.BiometryMethods;
import org.lensward.record.ConstantPart;
import org.lensward.record.Evidences;
import org.lensward.record.FormulaCodes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.bank.GuardedTransaction;
import org.lensward.record.bank.Signature;

/**
 * A proposed constant becomes the lens model's own, by a named clinician: a new version of its DeviceDefinition, guarded by the one that was
 * looked at, with a trail. Plans rest on that version, so every open booking with that model is planned again and its lens check voided.
 */
public final class ConstantAdoption {

    private static final String VERSION = Systems.extension("constants-version");
    private static final int PLACES = 4;

    private ConstantAdoption() {}

    /** A short lasting name of a proposal, by which a person chooses it. */
    public static String name(Proposal proposal) {
        return "c-"
                + Evidences.digest(proposal.scope() + "|" + proposal.formula() + "|" + proposal.aim())
                        .substring(0, 8);
    }

    /** Whether its aim is the usual one: no mean error, or for Haigis' three the regression of lens positions. */
    public static boolean isUsual(Proposal proposal) {
        return proposal.aim() == Aim.ZERO_MEAN || proposal.aim() == Aim.POSITION_REGRESSION;
    }

    /**
     * Why it cannot be adopted; empty where it can.
     *
     * <p>A lens model has one set of constants for each biometry method, whoever operates; a constant of one surgeon has no place there.
     */
    public static Optional<String> obstacle(Proposal proposal) {
        if (!proposal.enoughEyes()) {
            return Optional.of("it rests on too few eyes: " + proposal.eyes());
        }
        return proposal.scope().surgeon().isPresent()
                ? Optional.of("it is one surgeon's; the record has one set of constants for each model and method")
                : Optional.empty();
    }

    /**
     * One transaction.
     *
     * @param standing the model as it was looked at, with its version
     * @param at when
     * @throws IllegalArgumentException if it is of another model, or cannot be adopted
     */
    public static Bundle transaction(DeviceDefinition standing, Adoption adoption, Instant at) {
        Proposal proposal = adoption.proposal();
        if (!Shelf.name(standing).equals(proposal.scope().model())
                || obstacle(proposal).isPresent()) {
            throw new IllegalArgumentException("This constant cannot become that of " + Shelf.name(standing));
        }
        DeviceDefinition model = standing.copy();
        model.setId(standing.getIdElement().toUnqualifiedVersionless());
        model.getMeta().setVersionId(standing.getMeta().getVersionId());
        for (ConstantPart each : FormulaCodes.parts(proposal.proposed())) {
            set(model, each, proposal.scope().method());
        }
        model.getExtension().removeIf(each -> VERSION.equals(each.getUrl()));
        model.addExtension(VERSION, new StringType(adoption.version()));
        return new GuardedTransaction()
                .replace(model)
                .trail(trail(standing, adoption, at))
                .bundle();
    }

    private static void set(DeviceDefinition model, ConstantPart constant, BiometryMethod method) {
        model.getProperty().removeIf(each -> sameCode(each.getType(), constant.code()) && of(each, method));
        model.addProperty(new DeviceDefinitionPropertyComponent()
                .setType(constant.code())
                .addValueQuantity(rounded(constant.value()))
                .addValueCode(BiometryMethods.concept(method)));
    }

    private static Quantity rounded(Quantity exact) {
        return exact.setValue(exact.getValue().setScale(PLACES, RoundingMode.HALF_EVEN));
    }

    private static boolean of(DeviceDefinitionPropertyComponent property, BiometryMethod method) {
        return BiometryMethods.of(property.getValueCode())
                .filter(method::equals)
                .isPresent();
    }

    private static boolean sameCode(CodeableConcept one, CodeableConcept other) {
        return one.getCoding().stream()
                .anyMatch(coding -> other.getCodingFirstRep().getSystem().equals(coding.getSystem())
                        && other.getCodingFirstRep().getCode().equals(coding.getCode()));
    }

    private static Provenance trail(DeviceDefinition standing, Adoption adoption, Instant at) {
        Provenance trail = new Provenance();
        trail.addTarget(new Reference(Shelf.name(standing)));
        trail.setRecordedElement(
                new InstantType(Date.from(at), TemporalPrecisionEnum.MILLI, TimeZone.getTimeZone("UTC")));
        trail.addReason(new CodeableConcept().setText(words(adoption)));
        trail.addAgent().setWho(Signature.reference(adoption.clinician()));
        trail.addEntity().setRole(ProvenanceEntityRole.REVISION).setWhat(new Reference(Shelf.versionedName(standing)));
        return trail;
    }

    private static String words(Adoption adoption) {
        Proposal proposal = adoption.proposal();
        return "Constant of " + proposal.formula() + " adopted from " + proposal.eyes() + " operated eyes ("
                + proposal.aim().code() + "), version " + adoption.version() + ".";
    }
}

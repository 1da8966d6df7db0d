package org.lensward.record;

import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport.IssueSeverity;
import ca.uhn.fhir.context.support.ValidationSupportContext;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain.CacheConfiguration;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;

/**
 * Validates a resource against R4 and the profiles it declares, offline. Codes of systems we do not hold (SNOMED CT, LOINC, ATC) are at
 * most warnings; codes of a value set that lists them are still checked, and DICOM's come with R4. Built once per JVM; the first call takes some seconds.
 */
public final class ProfileValidator {

    private static final IValidationSupport SUPPORT = support(ours());
    private static final FhirValidator VALIDATOR = validator(SUPPORT);
    private static final Map<String, StructureDefinition> DEFINITIONS = new ConcurrentHashMap<>();

    private ProfileValidator() {}

    /** Each error or worse, as {@code place: message}; none for a valid resource. */
    public static List<String> errors(IBaseResource resource) {
        return messages(resource, ResultSeverityEnum.ERROR, ResultSeverityEnum.FATAL);
    }

    public static List<String> warnings(IBaseResource resource) {
        return messages(resource, ResultSeverityEnum.WARNING);
    }

    /** Each error, and each warning of a kind that {@code accepted-warnings.md} does not number. */
    public static List<String> faults(IBaseResource resource) {
        return VALIDATOR.validateWithResult(resource).getMessages().stream()
                .filter(message -> message.getSeverity() != ResultSeverityEnum.INFORMATION)
                .filter(message -> message.getSeverity() != ResultSeverityEnum.WARNING
                        || !AcceptedWarnings.accept(message.getMessage()))
                .map(message -> message.getSeverity() + " " + words(message))
                .toList();
    }

    /** The definition at that canonical address, ours or R4's, with its snapshot; made once, for making it takes long. */
    static StructureDefinition definition(String url) {
        return DEFINITIONS.computeIfAbsent(url, ProfileValidator::expanded);
    }

    private static StructureDefinition expanded(String url) {
        StructureDefinition definition =
                Objects.requireNonNull((StructureDefinition) SUPPORT.fetchStructureDefinition(url), url);
        return definition.hasSnapshot()
                ? definition
                : (StructureDefinition) Objects.requireNonNull(SUPPORT.generateSnapshot(
                        new ValidationSupportContext(SUPPORT), definition, url, null, definition.getName()));
    }

    private static List<String> messages(IBaseResource resource, ResultSeverityEnum... severities) {
        return VALIDATOR.validateWithResult(resource).getMessages().stream()
                .filter(message -> List.of(severities).contains(message.getSeverity()))
                .map(ProfileValidator::words)
                .toList();
    }

    private static String words(SingleValidationMessage message) {
        return message.getLocationString() + ": " + message.getMessage();
    }

    /** A validator that knows R4 and these definitions of ours, nothing else. */
    static FhirValidator knowing(List<Resource> definitions) {
        PrePopulatedValidationSupport known = new PrePopulatedValidationSupport(ProfileArtefacts.FHIR);
        definitions.forEach(known::addResource);
        return validator(support(known));
    }

    private static FhirValidator validator(IValidationSupport support) {
        FhirInstanceValidator module = new FhirInstanceValidator(support);
        module.setErrorForUnknownProfiles(true);
        module.setAnyExtensionsAllowed(false);
        return ProfileArtefacts.FHIR.newValidator().registerValidatorModule(module);
    }

    private static IValidationSupport support(PrePopulatedValidationSupport ours) {
        var fhir = ProfileArtefacts.FHIR;
        UnknownCodeSystemWarningValidationSupport unknown = new UnknownCodeSystemWarningValidationSupport(fhir);
        unknown.setNonExistentCodeSystemSeverity(IssueSeverity.WARNING);
        ValidationSupportChain chain = new ValidationSupportChain(
                CacheConfiguration.defaultValues(),
                ours,
                new DefaultProfileValidationSupport(fhir),
                new CommonCodeSystemsTerminologyService(fhir),
                new InMemoryTerminologyServerValidationSupport(fhir),
                new SnapshotGeneratingValidationSupport(fhir),
                unknown);
        // A binding asks for one coding of the value set, not for all (R4, 4.1.3 Coded types).
        chain.setCodeableConceptValidationSuccessfulIfNotAllCodingsAreValid(true);
        return chain;
    }

    private static PrePopulatedValidationSupport ours() {
        PrePopulatedValidationSupport ours = new PrePopulatedValidationSupport(ProfileArtefacts.FHIR);
        ProfileArtefacts.profiles().forEach(ours::addStructureDefinition);
        ProfileArtefacts.extensions().forEach(ours::addStructureDefinition);
        ProfileArtefacts.codeSystems().forEach(ours::addCodeSystem);
        ProfileArtefacts.valueSets().forEach(ours::addValueSet);
        return ours;
    }
}

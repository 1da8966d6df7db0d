package org.lensward.record.r5;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.UnknownCodeSystemWarningValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r5.model.DeviceUsage;
import org.hl7.fhir.r5.model.InventoryItem;
import org.hl7.fhir.r5.model.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.record.Fhir;

/** The package's examples of R4, translated, against HL7's definitions of R5 and its validator. */
class InR5Test {

    private static final FhirContext R5 = FhirContext.forR5Cached();
    private static final FhirValidator VALIDATOR = validator();

    private static FhirValidator validator() {
        UnknownCodeSystemWarningValidationSupport unknown = new UnknownCodeSystemWarningValidationSupport(R5);
        FhirInstanceValidator module = new FhirInstanceValidator(new ValidationSupportChain(
                new DefaultProfileValidationSupport(R5),
                new CommonCodeSystemsTerminologyService(R5),
                new InMemoryTerminologyServerValidationSupport(R5),
                unknown));
        module.setAnyExtensionsAllowed(true);
        return R5.newValidator().registerValidatorModule(module);
    }

    private static List<String> errors(IBaseResource resource) {
        return VALIDATOR.validateWithResult(resource).getMessages().stream()
                .filter(each -> each.getSeverity() == ResultSeverityEnum.ERROR
                        || each.getSeverity() == ResultSeverityEnum.FATAL)
                .map(each -> each.getLocationString() + ": " + each.getMessage())
                .toList();
    }

    private static <T extends IBaseResource> T example(Class<T> type, String name) {
        try {
            return Fhir.r4()
                    .newJsonParser()
                    .parseResource(type, Files.readString(Path.of("fhir-profiles/examples", name + ".json")));
        } catch (IOException missing) {
            throw new AssertionError(missing);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"lens-unit", "lens-unit-by-lot", "lens-unit-toric"})
    void a_carton_is_a_valid_device_and_a_valid_inventory_item(String name) {
        Device unit = example(Device.class, name);
        org.hl7.fhir.r5.model.Device device = InR5.device(unit);
        InventoryItem item = InR5.stock(unit);
        assertThat(errors(device)).isEmpty();
        assertThat(errors(item)).isEmpty();
        assertThat(device.getLotNumber()).isEqualTo(unit.getLotNumber());
        assertThat(device.getSerialNumber()).isEqualTo(unit.getSerialNumber());
        assertThat(device.getDefinition().getReference().getReference())
                .isEqualTo(unit.getDefinition().getReference());
        assertThat(item.getInstance().getLotNumber()).isEqualTo(unit.getLotNumber());
        assertThat(item.getInstance().getExpiryElement().getValueAsString())
                .isEqualTo(unit.getExpirationDateElement().getValueAsString());
        assertThat(item.getInstance().getLocation().getReference())
                .isEqualTo(unit.getLocation().getReference());
        assertThat(item.getName().get(0).getName())
                .isEqualTo(unit.getDeviceNameFirstRep().getName());
        assertThat(item.getProductReference().getReference()).isEqualTo("Device/" + name);
    }

    /** Every labelled figure: power, and the cylinder of a toric lens. */
    @ParameterizedTest
    @ValueSource(strings = {"lens-unit", "lens-unit-toric"})
    void no_labelled_figure_is_lost(String name) {
        Device unit = example(Device.class, name);
        assertThat(InR5.stock(unit).getCharacteristic())
                .extracting(each -> ((Quantity) each.getValue()).getValue())
                .containsExactlyElementsOf(unit.getProperty().stream()
                        .map(each -> each.getValueQuantityFirstRep().getValue())
                        .toList());
        assertThat(InR5.device(unit).getProperty())
                .extracting(each -> ((Quantity) each.getValue()).getValue())
                .containsExactlyElementsOf(unit.getProperty().stream()
                        .map(each -> each.getValueQuantityFirstRep().getValue())
                        .toList());
    }

    @Test
    void the_state_of_a_carton_is_the_inventory_status_and_who_it_is_held_for_stays_an_extension() {
        InventoryItem item = InR5.stock(example(Device.class, "lens-unit"));
        assertThat(item.getStatus()).isEqualTo(InventoryItem.InventoryItemStatusCodes.ACTIVE);
        assertThat(item.getInventoryStatusFirstRep().getCodingFirstRep().getCode())
                .isEqualTo("reserved");
        assertThat(item.getExtension())
                .extracting(each -> each.getUrl().replaceAll(".*/", ""))
                .containsExactlyInAnyOrder("consigned", "held-for");
    }

    @Test
    void a_use_is_a_valid_device_usage() {
        DeviceUseStatement use = example(DeviceUseStatement.class, "lens-use");
        DeviceUsage usage = InR5.usage(use);
        assertThat(errors(usage)).isEmpty();
        assertThat(usage.getStatus()).isEqualTo(DeviceUsage.DeviceUsageStatus.ACTIVE);
        assertThat(usage.getPatient().getReference()).isEqualTo(use.getSubject().getReference());
        assertThat(usage.getDevice().getReference().getReference())
                .isEqualTo(use.getDevice().getReference());
        assertThat(usage.getBodySite().getConcept().getCodingFirstRep().getCode())
                .isEqualTo(use.getBodySite().getCodingFirstRep().getCode());
    }

    @Test
    void the_validator_sees_what_is_wrong() {
        DeviceUsage usage = InR5.usage(example(DeviceUseStatement.class, "lens-use"));
        usage.setPatient(null);
        assertThat(errors(usage)).anyMatch(each -> each.contains("patient"));
    }
}

package org.lensward.board.eye;

import ca.uhn.fhir.context.FhirContext;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.board.page.Page;
import org.lensward.flow.RecordClient;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.RecordName;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;

/** Where a number stands in the record: resource, version, element and value, read there at this moment. */
@Page
public final class EvidencePage {

    /** What plans rest on and consist of; nothing else of the record is shown here. */
    private static final Set<String> TYPES = Set.of(
            "AllergyIntolerance",
            "Appointment",
            "BodyStructure",
            "Condition",
            "DetectedIssue",
            "Device",
            "DeviceDefinition",
            "DeviceRequest",
            "Medication",
            "MedicationRequest",
            "MedicationStatement",
            "Observation",
            "Patient",
            "Procedure",
            "RiskAssessment",
            "ServiceRequest",
            "Task");

    private final RecordClient client;
    private final FhirContext fhir;
    private final ObjectMapper json = new ObjectMapper();

    public EvidencePage(RecordClient client, FhirContext fhir) {
        this.client = client;
        this.fhir = fhir;
    }

    @GetMapping({"/evidence/{type}/{id}", "/evidence/{type}/{id}/_history/{version}"})
    String evidence(
            @PathVariable String type,
            @PathVariable String id,
            @PathVariable Optional<String> version,
            @RequestParam Optional<String> element,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean part,
            Model model) {
        Resource resource = read(name(type, id), version);
        String text = fhir.newJsonParser().setPrettyPrint(true).encodeResourceToString(resource);
        model.addAttribute("resource", type + "/" + id);
        model.addAttribute(
                "version",
                Optional.ofNullable(resource.getMeta().getVersionId()).orElse("not versioned"));
        model.addAttribute("current", version.isEmpty());
        model.addAttribute("element", element.orElse(""));
        model.addAttribute(
                "values",
                element.map(each -> ElementValues.of(tree(text), each)).orElse(List.of()));
        model.addAttribute("whole", text);
        return part ? "evidence :: evidence" : "evidence";
    }

    private static String name(String type, String id) {
        return Optional.of(type)
                .filter(TYPES::contains)
                .flatMap(each -> RecordName.of(each, id))
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.NOTFOUND, "evidence", "No plan rests on anything of that name."));
    }

    private Resource read(String name, Optional<String> version) {
        if (version.filter(each -> !each.matches("[A-Za-z0-9.-]{1,64}")).isPresent()) {
            throw new UnreadableRecord(IssueType.VALUE, "version", "A version has letters, digits, '-' and '.'.");
        }
        String asked = name + version.map(each -> "/_history/" + each).orElse("");
        return client.gather(List.of(asked)).getEntry().stream()
                .map(entry -> entry.getResource())
                .findFirst()
                .orElseThrow(() ->
                        new UnreadableRecord(IssueType.NOTFOUND, name, "The record no longer has it in that version."));
    }

    private JsonNode tree(String text) {
        try {
            return json.readTree(text);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("HAPI writes JSON", impossible);
        }
    }
}

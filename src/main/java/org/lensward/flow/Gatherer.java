package org.lensward.flow;

import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.record.PlanKey;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteSearch;

/** Brings everything that concerns one booking in one request: the patient, both eyes, the lenses, the plan that stands. */
public final class Gatherer {

    private final RecordClient client;
    private final SiteSearch search;

    /** From a record whose lens models carry our code. */
    public Gatherer(RecordClient client) {
        this(client, new SiteSearch(SiteCodes.none()));
    }

    /**
     * From a record with codes of its own.
     *
     * @param client the record
     * @param search what to ask it for
     */
    public Gatherer(RecordClient client, SiteSearch search) {
        this.client = client;
        this.search = search;
    }

    /** What the record holds of that booking. */
    public Bundle gather(String booking) {
        return client.gather(questions(BookingName.parse(booking)));
    }

    private List<String> questions(BookingName name) {
        String patient = name.patient();
        String plan = PlanKey.of(name.booking()).token();
        return List.of(
                name.booking(),
                patient,
                "Appointment?based-on=" + name.booking(),
                "Observation?subject=" + patient + "&_count=500",
                "Condition?subject=" + patient + "&_count=500",
                "Procedure?subject=" + patient + "&_count=500",
                "MedicationStatement?subject=" + patient + "&_include=MedicationStatement:medication&_count=500",
                "MedicationRequest?subject=" + patient + "&_include=MedicationRequest:medication&_count=500",
                "BodyStructure?patient=" + patient + "&_count=500",
                "AllergyIntolerance?patient=" + patient + "&_count=500",
                "DeviceDefinition?type=" + search.lensModels() + "&_count=500",
                "DeviceRequest?identifier=" + plan,
                "Task?identifier=" + plan,
                "RiskAssessment?identifier=" + plan,
                "DetectedIssue?identifier=" + plan + "&_count=500");
    }
}

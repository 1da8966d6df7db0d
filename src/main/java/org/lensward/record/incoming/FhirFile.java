package org.lensward.record.incoming;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.finding.FindingCode;
import org.lensward.record.Shelf;
import org.lensward.record.SidedCodes;

/**
 * Biometry in FHIR: Observations, with their Patients beside them or named by identifier. Ids in a file are those of another server:
 * a patient is told by identifier alone, an Observation gets an id of its own that follows from the patient and the id it had. What
 * else an Observation refers to is left off, for it is not in the record.
 */
public final class FhirFile {

    private final Site site;
    private final Shelf shelf;
    private final List<Observation> observations;

    private FhirFile(List<Resource> resources, Site site) {
        Bundle all = new Bundle();
        resources.forEach(each -> all.addEntry().setResource(each));
        this.site = site;
        this.shelf = new Shelf(all);
        this.observations = shelf.all(Observation.class).toList();
        List<Resource> others = resources.stream()
                .filter(each -> !(each instanceof Observation) && !(each instanceof Patient))
                .toList();
        if (!others.isEmpty() || observations.isEmpty()) {
            throw refused("resources", "only Observations and their Patients are taken, and an Observation has an id");
        }
        long named = resources.stream().filter(Observation.class::isInstance).count();
        if (named != observations.size()) {
            throw refused("resources", "an Observation has no id, or two have the same");
        }
    }

    /** What a Bundle of any type brings. */
    public static List<Incoming> bundle(FhirContext fhir, String json, Site site) {
        if (!(parse(fhir, json, "the Bundle") instanceof Bundle bundle)) {
            throw refused("the file", "it is no Bundle");
        }
        bundle.getEntry().stream()
                .filter(each -> each.hasFullUrl()
                        && each.hasResource()
                        && each.getFullUrl().startsWith("urn:"))
                .forEach(each -> each.getResource().setId(each.getFullUrl()));
        List<Resource> resources = new ArrayList<>();
        bundle.getEntry().forEach(each -> resources.add(each.getResource()));
        return new FhirFile(resources.stream().filter(each -> each != null).toList(), site).read();
    }

    /** What lines of resources, as a bulk export writes them, bring. */
    public static List<Incoming> lines(FhirContext fhir, String ndjson, Site site) {
        List<Resource> resources = new ArrayList<>();
        int number = 0;
        for (String line : ndjson.split("\n")) {
            number++;
            if (!line.isBlank()) {
                resources.add(parse(fhir, line, "line " + number));
            }
        }
        return new FhirFile(resources, site).read();
    }

    private static Resource parse(FhirContext fhir, String json, String place) {
        if (!BoundedJson.holds(json)) {
            throw refused(place, "it is no JSON, or nests deeper or holds larger numbers than any measurement");
        }
        IParser parser = fhir.newJsonParser().setParserErrorHandler(new StrictErrorHandler());
        try {
            return (Resource) parser.parseResource(json);
        } catch (DataFormatException | IllegalArgumentException wrong) {
            throw refused(place, "it is no FHIR R4 resource in JSON");
        }
    }

    private List<Incoming> read() {
        Map<String, Whom> whose = new HashMap<>();
        Map<String, String> ids = new HashMap<>();
        for (Observation each : observations) {
            Whom whom = whom(each);
            whose.put(Shelf.name(each), whom);
            Identifier first = whom.identifiers().get(0);
            ids.put(Shelf.name(each), LastingId.of("file", first.getSystem(), first.getValue(), Shelf.name(each)));
        }
        return observations.stream()
                .map(each -> new Incoming(
                        Optional.ofNullable(whose.get(Shelf.name(each))).orElseThrow(), List.of(own(each, ids)), false))
                .toList();
    }

    private Whom whom(Observation observation) {
        String place = place(observation);
        Optional<Patient> patient = shelf.find(Patient.class, observation.getSubject());
        List<Identifier> named = patient.map(Patient::getIdentifier)
                .orElseGet(() -> List.of(observation.getSubject().getIdentifier()));
        List<Identifier> known = named.stream()
                .filter(each -> each.hasValue() && site.systems().containsValue(each.getSystem()))
                .map(each -> new Identifier().setSystem(each.getSystem()).setValue(each.getValue()))
                .toList();
        if (known.isEmpty()) {
            throw new RefusedInput(FindingCode.PATIENT_SYSTEM_UNKNOWN, place, place + ".subject");
        }
        Optional<LocalDate> born = patient.map(
                        each -> each.getBirthDateElement().getValueAsString())
                .filter(each -> each.length() == 10)
                .map(LocalDate::parse);
        return new Whom(place, known, born);
    }

    private static Observation own(Observation sent, Map<String, String> ids) {
        boolean sided = SidedCodes.of(sent.getCode(), sent.getBodySite()).size() == 1;
        if (SidedCodes.needEye(sent.getCode()) && !sided && sent.getHasMember().isEmpty()) {
            throw refused(place(sent), "it does not say which one eye");
        }
        Observation own = new Observation();
        own.setId(ids.get(Shelf.name(sent)));
        own.setStatus(sent.getStatus()).setCode(sent.getCode()).setValue(sent.getValue());
        own.setEffective(sent.getEffective()).setIssuedElement(sent.getIssuedElement());
        own.setBodySite(sent.getBodySite()).setMethod(sent.getMethod()).setComponent(sent.getComponent());
        own.setIdentifier(sent.getIdentifier()).setDataAbsentReason(sent.getDataAbsentReason());
        for (Reference member : sent.getHasMember()) {
            String id = ids.get(Shelf.name(member));
            if (id == null) {
                throw refused(place(sent), "a member is not in the file");
            }
            own.addHasMember(new Reference("Observation/" + id));
        }
        return own;
    }

    private static String place(Observation observation) {
        String name = Shelf.name(observation);
        return name.matches("Observation/[A-Za-z0-9\\-.]{1,64}|urn:[a-z]+:[0-9a-f\\-.]{1,64}") ? name : "Observation";
    }

    private static RefusedInput refused(String place, String why) {
        return new RefusedInput(FindingCode.FILE_UNREADABLE, place, place, why);
    }
}

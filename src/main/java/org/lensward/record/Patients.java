package org.lensward.record;

import java.util.LinkedHashMap;
import java.util.Map;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;

/** How a patient and their numbers are called on a page. */
public final class Patients {

    private Patients() {}

    /** The first name given, in full. */
    public static String name(Patient patient) {
        return patient.getNameFirstRep().getNameAsSingleString().strip();
    }

    /** What the number of each system is called. */
    public static Map<String, String> numberNames(Patient patient) {
        Map<String, String> names = new LinkedHashMap<>();
        patient.getIdentifier().stream()
                .filter(Identifier::hasSystem)
                .forEach(each -> names.put(each.getSystem(), numberName(each)));
        return names;
    }

    /** By its type, else by the last word of its system. */
    public static String numberName(Identifier identifier) {
        if (identifier.getType().hasText()) {
            return identifier.getType().getText();
        }
        if (identifier.getType().getCodingFirstRep().hasDisplay()) {
            return identifier.getType().getCodingFirstRep().getDisplay();
        }
        String system = identifier.hasSystem() ? identifier.getSystem() : "number";
        return system.replaceAll("[/:#]+$", "").replaceAll(".*[/:#]", "").replace('-', ' ');
    }
}

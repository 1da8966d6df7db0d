package org.lensward.record.outcome;

import java.util.Locale;
import org.lensward.eye.Laterality;

/** Pieces of FHIR JSON, printed short. */
final class JsonParts {

    static final String OURS = "https://lensward.org/fhir/CodeSystem/";
    static final String SNOMED = "http://snomed.info/sct";

    private static final String UCUM = "http://unitsofmeasure.org";

    private JsonParts() {}

    static String side(Laterality of) {
        return concept(SNOMED, of == Laterality.RIGHT ? "1290032005" : "1290031003");
    }

    static String measured(String code) {
        return concept(OURS + "measurement", code);
    }

    static String concept(String system, String code) {
        return "{\"coding\":[" + coding(system, code) + "]}";
    }

    static String coding(String system, String code) {
        return "{\"system\":\"" + system + "\",\"code\":\"" + code + "\"}";
    }

    static String reference(String name) {
        return "{\"reference\":\"" + name + "\"}";
    }

    static String components(String... components) {
        return ",\"component\":[" + String.join(",", components) + "]";
    }

    static String component(String code, String quantity) {
        return "{\"code\":" + code + ",\"valueQuantity\":" + quantity + "}";
    }

    static String quantity(double value, String code) {
        return "{\"value\":" + number(value) + ",\"system\":\"" + UCUM + "\",\"code\":\"" + code + "\"}";
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
    }
}

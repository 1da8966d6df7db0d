package org.lensward.record;

/** The namespaces of codes, identifiers, profiles and extensions. */
public final class Systems {

    public static final String BASE = "https://lensward.org/fhir";
    public static final String PLAN_IDENTIFIER = BASE + "/sid/eye-plan";

    public static final String SNOMED = "http://snomed.info/sct";
    public static final String LOINC = "http://loinc.org";
    public static final String DICOM = "http://dicom.nema.org/resources/ontology/DCM";
    public static final String ATC = "http://www.whocc.no/atc";
    public static final String UCUM = "http://unitsofmeasure.org";

    public static final String MEASUREMENT = codeSystem("measurement");
    public static final String BIOMETRY_METHOD = codeSystem("biometry-method");
    public static final String FORMULA = codeSystem("formula");
    public static final String LENS_PARAMETER = codeSystem("lens-parameter");
    public static final String LENS_PROPERTY = codeSystem("lens-property");
    public static final String LENS_SITE = codeSystem("lens-site");
    public static final String LENS_FOCUS = codeSystem("lens-focus");
    public static final String OPTIC_MATERIAL = codeSystem("optic-material");
    public static final String LENS_BUILD = codeSystem("lens-build");
    public static final String KIT_ROLE = codeSystem("kit-role");
    public static final String DEVICE_TYPE = codeSystem("device-type");
    public static final String FINDING = codeSystem("finding");
    public static final String TASK = codeSystem("task");
    public static final String CHECK_STATE = codeSystem("check-state");
    public static final String CHECK_INPUT = codeSystem("check-input");
    public static final String CHECK_OUTPUT = codeSystem("check-output");
    public static final String CHECK_RESULT = codeSystem("check-result");
    public static final String CHECKPOINT = codeSystem("checkpoint");
    public static final String SURGEON_GRADE = codeSystem("surgeon-grade");
    public static final String RISK_MODEL = codeSystem("risk-model");
    public static final String UNIT_STATE = codeSystem("unit-state");
    public static final String UNIT_MOVEMENT = codeSystem("unit-movement");
    public static final String RISK_OUTCOME = codeSystem("risk-outcome");
    public static final String SIGN = codeSystem("sign");
    public static final String OPENING_TECHNIQUE = codeSystem("opening-technique");
    public static final String DYE_AGENT = codeSystem("dye-agent");
    public static final String THEATRE_ITEM = codeSystem("theatre-item");
    public static final String PRECAUTION_TOPIC = codeSystem("precaution-topic");
    public static final String ANAESTHETIC = codeSystem("anaesthetic");
    public static final String LENS_TYPE = codeSystem("lens-type");
    public static final String NUCLEUS_METHOD = codeSystem("nucleus-method");
    public static final String ALLERGEN = codeSystem("allergen");
    public static final String REFRACTION_METHOD = codeSystem("refraction-method");
    public static final String COMPLICATION = codeSystem("complication");
    public static final String OUTCOME_MEASURE = codeSystem("outcome-measure");
    public static final String OUTCOME_EXCLUSION = codeSystem("outcome-exclusion");

    private Systems() {}

    /** The address of a profile of ours. */
    public static String profile(String name) {
        return BASE + "/StructureDefinition/" + name;
    }

    /** The address of an extension of ours. */
    public static String extension(String name) {
        return BASE + "/StructureDefinition/" + name;
    }

    private static String codeSystem(String name) {
        return BASE + "/CodeSystem/" + name;
    }
}

package org.lensward.record;

import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Resource;

/** The same resource of the other eye: right and left change places wherever a code or a word of ours says which. */
final class OtherEye {

    /** SNOMED CT: eye, eyeball, eye structure and their region, right and left; LOINC: axial length, right and left. */
    private static final Map<String, String> RIGHT_TO_LEFT = Map.of(
            "1290032005", "1290031003",
            "1290043002", "1290041000",
            "362502000", "362503005",
            "18944008", "8966001",
            "24028007", "7771000",
            "64742-0", "66067-0",
            "right eye", "left eye");

    private OtherEye() {}

    static Resource of(Resource resource) {
        String json = ProfileArtefacts.json(resource);
        for (Map.Entry<String, String> pair : RIGHT_TO_LEFT.entrySet()) {
            json = exchange(json, pair.getKey(), pair.getValue());
        }
        return (Resource) ProfileArtefacts.FHIR.newJsonParser().parseResource(json);
    }

    /** {@code right}, {@code left}, both or neither. */
    static Stream<String> named(Resource resource) {
        String json = ProfileArtefacts.json(resource);
        return RIGHT_TO_LEFT.entrySet().stream()
                .flatMap(pair -> Stream.of(
                        json.contains(quoted(pair.getKey())) ? "right" : "",
                        json.contains(quoted(pair.getValue())) ? "left" : ""))
                .filter(side -> !side.isEmpty())
                .distinct();
    }

    private static String exchange(String json, String right, String left) {
        return Pattern.compile(quoted(right) + "|" + quoted(left))
                .matcher(json)
                .replaceAll(found -> found.group().equals(quoted(right)) ? quoted(left) : quoted(right));
    }

    private static String quoted(String word) {
        return '"' + word + '"';
    }
}

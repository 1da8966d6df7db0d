package org.lensward.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Resource;

/**
 * One thing wrong with a good example; listed in {@code breaches.psv}.
 *
 * @param example the good one
 * @param refusal what the validator must say
 * @param pointer where the wrong goes
 * @param value the wrong in JSON; empty to take away what is there
 * @param otherEye whether it is tried with the eyes exchanged
 */
record Breach(String example, String refusal, String pointer, String value, boolean otherEye) {

    private static final ObjectMapper JSON = new ObjectMapper();

    static List<Breach> all() {
        return ProfileArtefacts.lines("breaches.psv")
                .map(line -> line.split("\\|", 4))
                .map(cells -> new Breach(cells[0].strip(), cells[1].strip(), cells[2].strip(), cells[3].strip(), false))
                .toList();
    }

    Breach inTheOtherEye() {
        return new Breach(example, refusal, pointer, value, true);
    }

    /** Which eyes the good example speaks of as it is tried, {@code left} or {@code right}. */
    Stream<String> eyes() {
        return OtherEye.named(otherEye ? OtherEye.of(good()) : good());
    }

    private Resource good() {
        return ProfileArtefacts.example(example);
    }

    /** The example with the wrong done to it. */
    Resource commit() throws JsonProcessingException {
        Resource broken = broken();
        return otherEye ? OtherEye.of(broken) : broken;
    }

    private Resource broken() throws JsonProcessingException {
        JsonNode tree = JSON.readTree(ProfileArtefacts.json(good()));
        new JsonEdit(pointer, value).apply(tree);
        return (Resource) ProfileArtefacts.FHIR.newJsonParser().parseResource(tree.toString());
    }

    @Override
    public String toString() {
        return example + " " + pointer + ": " + refusal + (otherEye ? ", the other eye" : "");
    }
}

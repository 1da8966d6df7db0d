package org.lensward;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;

/** What people present of a demo story when all is right, in the file that {@code lensward check --help} describes. */
final class Presentation {

    private final ObjectNode file = new ObjectMapper().createObjectNode();

    /**
     * Everything right.
     *
     * @param story folder of the demo
     * @param eye as every place states it
     * @param fingerprint of the plan, or its beginning
     */
    Presentation(String story, String eye, String fingerprint) {
        Patient patient = patient(story);
        ObjectNode who = file.putObject("patient")
                .put("birth-date", patient.getBirthDateElement().getValueAsString());
        ArrayNode numbers = who.putArray("numbers");
        patient.getIdentifier()
                .forEach(each ->
                        numbers.addObject().put("system", each.getSystem()).put("value", each.getValue()));
        file.putObject("eyes")
                .put("booking", eye)
                .put("sheet", eye)
                .put("biometry", eye)
                .put("mark", eye);
        file.put("plan", fingerprint);
        file.putObject("carton").put("state", "intact");
        file.putArray("allergies");
        file.putArray("back-ups");
        file.putObject("people").put("reader", "First nurse").put("second", "Second nurse");
        file.put("at", "2026-12-10T08:20:00+00:00");
    }

    private static Patient patient(String story) {
        try {
            String text = Files.readString(Path.of("demo-data", story, "in.json"));
            Bundle bundle = Fhir.r4().newJsonParser().parseResource(Bundle.class, text);
            return new Shelf(bundle).all(Patient.class).findFirst().orElseThrow();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** With a lens that stands by. */
    Presentation backUp(String role, String model, String power, String... cylinder) {
        ObjectNode backUp = file.withArray("back-ups").addObject().put("role", role);
        lens(backUp.putObject("lens"), model, power, cylinder);
        return this;
    }

    /** With the box read by the second person. */
    Presentation box(String model, String power, String... cylinder) {
        ObjectNode read = ((ObjectNode) file.get("carton")).putObject("read").put("reader", "Second nurse");
        lens(read.putObject("lens"), model, power, cylinder);
        return this;
    }

    private static void lens(ObjectNode lens, String model, String power, String... cylinder) {
        lens.put("model", "DeviceDefinition/" + model).put("power", power);
        List.of(cylinder).forEach(each -> lens.put("cylinder", each));
    }

    /** Changed by hand. */
    Presentation with(Consumer<ObjectNode> change) {
        change.accept(file);
        return this;
    }

    /** The file, in that folder. */
    String in(Path folder) {
        try {
            return Files.writeString(Files.createTempFile(folder, "presented", ".json"), file.toString())
                    .toString();
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }
}

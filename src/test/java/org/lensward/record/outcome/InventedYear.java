package org.lensward.record.outcome;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Shelf;

/**
 * Writes {@code demo-data/outcomes-of-a-year/export.ndjson}: a year's eyes that nobody has, every ninth with something wrong, the lines in no
 * order. The same every time. To be run in the project's folder after the invention was changed.
 */
public final class InventedYear {

    static final int EYES = 240;
    private static final long SEED = 1;
    private static final Path FOLDER = Path.of("demo-data/outcomes-of-a-year");

    private InventedYear() {}

    /** No arguments. */
    public static void main(String... arguments) throws IOException {
        Files.createDirectories(FOLDER);
        Files.write(FOLDER.resolve("export.ndjson"), lines());
    }

    /** What the file holds. */
    public static List<String> lines() {
        List<String> lines = new ArrayList<>(IntStream.range(0, EYES)
                .boxed()
                .flatMap(number -> new InventedLines(new InventedEye(number, SEED), fault(number)).all())
                .toList());
        lines.addAll(models());
        Collections.shuffle(lines, new Random(SEED));
        return lines;
    }

    /** A dozen eyes with the resources they refer to, as a server wants them. */
    public static List<String> few() {
        List<String> lines = new ArrayList<>();
        for (int surgeon = 1; surgeon <= 3; surgeon++) {
            lines.add("{\"resourceType\":\"Practitioner\",\"id\":\"surgeon-" + surgeon + "\"}");
        }
        for (int number = 0; number < 12; number++) {
            InventedEye eye = new InventedEye(number, SEED);
            if (eye.person == number) {
                lines.add("{\"resourceType\":\"Patient\",\"id\":\""
                        + eye.patient().substring(8) + "\"}");
            }
            lines.add("{\"resourceType\":\"ServiceRequest\",\"id\":\"booking-" + eye.key()
                    + "\",\"status\":\"completed\",\"intent\":\"order\",\"subject\":{\"reference\":\"" + eye.patient()
                    + "\"}}");
            new InventedLines(eye, number == 3 ? Fault.OPERATION_WITHOUT_EYE : Fault.NONE)
                    .all()
                    .forEach(lines::add);
        }
        return lines;
    }

    /** The same, as a transaction that creates them. */
    public static Bundle fewAsTransaction(FhirContext fhir) {
        Bundle transaction = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        for (String line : few()) {
            Resource resource = (Resource) fhir.newJsonParser().parseResource(line);
            transaction
                    .addEntry()
                    .setResource(resource)
                    .getRequest()
                    .setMethod(Bundle.HTTPVerb.PUT)
                    .setUrl(Shelf.name(resource));
        }
        return transaction;
    }

    /** Every ninth eye from the fourth on, one fault after the other. */
    private static Fault fault(int number) {
        Fault[] all = Fault.values();
        return number % 9 == 3 ? all[1 + number / 9 % (all.length - 1)] : Fault.NONE;
    }

    /** The lens models of the other demo folders. */
    static List<String> models() {
        try {
            var tree = ResourceLines.JSON.readTree(Files.readString(Path.of("demo-data/an-ordinary-eye/in.json")));
            return Stream.iterate(0, index -> index < tree.path("entry").size(), index -> index + 1)
                    .map(index -> tree.path("entry").path(index).path("resource"))
                    .filter(each -> each.path("resourceType").asText().equals("DeviceDefinition"))
                    .map(Object::toString)
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

package org.lensward.record.outcome;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.lensward.record.Evidences;

/**
 * Brings together what an export says of each patient, in whatever order it came. A lens in the eye (Device) and the trail of a plan
 * (Provenance) name no patient of their own; they are joined by what names them: first sorted by name, then handed to the patients who
 * asked. Twice sorted, never held: the bound is that of {@link SortedSpool}. Names, notes and narratives of people are not spooled.
 */
final class PatientSpool implements AutoCloseable {

    /** Where each type we read says whose it is. */
    private static final Map<String, String> OWNED_BY = Map.of(
            "Procedure", "subject",
            "Observation", "subject",
            "Condition", "subject",
            "AdverseEvent", "subject",
            "RiskAssessment", "subject",
            "DeviceRequest", "subject",
            "DeviceUseStatement", "subject",
            "BodyStructure", "patient");

    private static final Set<String> NOT_NEEDED = Set.of("text", "note", "contained", "encounter", "identifier");
    private static final String WANTED = "w";
    private static final String OFFERED = "o";

    private final SortedSpool byName;
    private final SortedSpool byPatient;
    private final List<String> models = new ArrayList<>();

    private PatientSpool(SortedSpool byName, SortedSpool byPatient) {
        this.byName = byName;
        this.byPatient = byPatient;
    }

    static PatientSpool open(int longestRun) throws IOException {
        return new PatientSpool(SortedSpool.open(longestRun), SortedSpool.open(longestRun));
    }

    void take(ObjectNode resource) throws IOException {
        String type = resource.path("resourceType").asText();
        String name = type + "/" + resource.path("id").asText();
        Optional<String> owner = Optional.ofNullable(OWNED_BY.get(type)).flatMap(field -> name(resource.path(field)));
        if (owner.isPresent()) {
            owned(resource, name, owner.get());
        } else if (type.equals("DeviceDefinition")) {
            models.add(resource.toString());
        } else if (type.equals("Device")) {
            offer(name, resource);
        } else if (type.equals("Provenance")) {
            for (JsonNode target : resource.path("target")) {
                Optional<String> of = name(target).filter(each -> each.startsWith("Procedure/"));
                if (of.isPresent()) {
                    offer(of.get(), resource);
                }
            }
        }
    }

    /** The lens models: a catalogue, however many eyes there are. */
    List<String> models() {
        return List.copyOf(models);
    }

    private void owned(ObjectNode resource, String name, String owner) throws IOException {
        String key = Evidences.digest(owner);
        byPatient.add(key, row(resource));
        if (name.startsWith("Procedure/")) {
            want(name, key);
        }
        Stream<JsonNode> devices = Stream.of(resource.path("device"));
        Stream<JsonNode> focal = Stream.iterate(
                        0, index -> index < resource.path("focalDevice").size(), index -> index + 1)
                .map(index -> resource.path("focalDevice").path(index).path("manipulated"));
        for (String device : Stream.concat(devices, focal)
                .flatMap(each -> name(each).stream())
                .toList()) {
            want(device, key);
        }
    }

    private void want(String name, String key) throws IOException {
        byName.add(name, WANTED + key);
    }

    private void offer(String name, ObjectNode resource) throws IOException {
        byName.add(name, OFFERED + row(resource));
    }

    private static String row(ObjectNode resource) {
        return resource.remove(NOT_NEEDED).toString();
    }

    /** A reference without server and version. */
    private static Optional<String> name(JsonNode reference) {
        String text = reference.path("reference").asText();
        if (text.isEmpty() || text.startsWith("urn:")) {
            return Optional.of(text).filter(each -> !each.isEmpty());
        }
        String[] parts = text.replaceAll("/_history/.*", "").split("/", -1);
        return parts.length < 2
                ? Optional.empty()
                : Optional.of(parts[parts.length - 2] + "/" + parts[parts.length - 1]);
    }

    /** Hands over every patient's rows, the patient by a digest of the name. */
    void forEachPatient(SortedSpool.Keyed taker) throws IOException {
        byName.forEachKey(this::join);
        byPatient.forEachKey(taker);
    }

    private void join(String name, List<String> rows) throws IOException {
        List<String> wanted =
                rows.stream().filter(row -> row.startsWith(WANTED)).distinct().toList();
        for (String offered :
                rows.stream().filter(row -> row.startsWith(OFFERED)).toList()) {
            for (String key : wanted) {
                byPatient.add(key.substring(1), offered.substring(1));
            }
        }
    }

    @Override
    public void close() throws IOException {
        byName.close();
        byPatient.close();
    }
}

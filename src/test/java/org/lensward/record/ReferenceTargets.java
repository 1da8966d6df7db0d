package org.lensward.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.CanonicalType;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;

/**
 * Whether the references of a resource point to resources of a type that its profile, or R4 below it, allows there. A validator without
 * the targets at hand does not ask.
 */
public final class ReferenceTargets {

    private static final String ANY = "Resource";

    /** {@code Type/id} at the end of a reference, with or without a server before and a version behind. */
    private static final Pattern TYPE =
            Pattern.compile("(?:^|/)([A-Z][A-Za-z]+)/[A-Za-z0-9.-]{1,64}(?:/_history/.+)?$");

    private final StructureDefinition profile;
    private final List<String> misdirected = new ArrayList<>();

    private ReferenceTargets(StructureDefinition profile) {
        this.profile = profile;
    }

    /** Each reference to a type not allowed there, as {@code path -> reference}; none for a good resource. */
    public static List<String> misdirected(IBaseResource resource) {
        String declared = ProfileArtefacts.declared((Resource) resource);
        ReferenceTargets targets = new ReferenceTargets(ProfileValidator.definition(declared));
        targets.walk(json(resource), resource.fhirType());
        return targets.misdirected;
    }

    /** The types allowed at a path such as {@code Task.focus}, over all slices; {@code Resource} for any. */
    static Set<String> allowed(StructureDefinition definition, String path) {
        Set<String> allowed = new TreeSet<>();
        for (ElementDefinition element : definition.getSnapshot().getElement()) {
            if (element.getPath().equals(path)) {
                targets(element).forEach(allowed::add);
            }
        }
        return allowed;
    }

    private static List<String> targets(ElementDefinition element) {
        return element.getType().stream()
                .filter(type -> type.getWorkingCode().equals("Reference"))
                .flatMap(type -> type.getTargetProfile().stream())
                .map(CanonicalType::getValue)
                .map(url -> url.substring(url.lastIndexOf('/') + 1))
                .toList();
    }

    private void walk(JsonNode node, String path) {
        node.properties().forEach(field -> {
            String below = path + "." + field.getKey().replaceAll("^value[A-Z].*", "value[x]");
            for (JsonNode child : field.getValue().isArray() ? field.getValue() : List.of(field.getValue())) {
                if (field.getKey().equals("extension")) {
                    extension(child, below);
                } else if (child.path("reference").isTextual()) {
                    judge(below, child.get("reference").asText(), allowed(profile, below));
                } else if (child.isObject()) {
                    walk(child, below);
                }
            }
        });
    }

    private void extension(JsonNode extension, String path) {
        JsonNode reference = extension.path("valueReference").path("reference");
        if (reference.isTextual()) {
            StructureDefinition definition =
                    ProfileValidator.definition(extension.get("url").asText());
            judge(path, reference.asText(), allowed(definition, "Extension.value[x]"));
        }
    }

    private void judge(String path, String reference, Set<String> allowed) {
        Matcher type = TYPE.matcher(reference);
        boolean good = type.find() && (allowed.contains(ANY) || allowed.contains(type.group(1)));
        if (!good) {
            misdirected.add(path + " -> " + reference + " where only " + allowed + " may stand");
        }
    }

    private static JsonNode json(IBaseResource resource) {
        try {
            return new ObjectMapper().readTree(ProfileArtefacts.json(resource));
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("HAPI wrote no JSON", impossible);
        }
    }
}

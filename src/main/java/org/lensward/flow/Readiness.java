package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;

/**
 * What a server's CapabilityStatement says it can do, against the statement of needs that is published with the profiles
 * ({@code needed-from-record.json}). A server may do more, or less, than it says.
 *
 * @param missing what is needed and not said to be there, the indispensable first
 */
public record Readiness(List<Missing> missing) {

    private static final String NEEDED = "/capability-statements/needed-from-record.json";

    public Readiness {
        missing = List.copyOf(missing);
    }

    /**
     * Something missing.
     *
     * @param must whether nothing works, or something would be lost, without it
     * @param what in words
     */
    public record Missing(boolean must, String what) {

        @Override
        public String toString() {
            return (must ? "must:   " : "should: ") + what;
        }
    }

    /** Whether nothing indispensable is missing. */
    public boolean mayRun() {
        return missing.stream().noneMatch(Missing::must);
    }

    /** The server's statement against the published needs. */
    public static Readiness of(FhirContext fhir, CapabilityStatement server) {
        try (InputStream needed = Objects.requireNonNull(Readiness.class.getResourceAsStream(NEEDED), NEEDED)) {
            String text = new String(needed.readAllBytes(), StandardCharsets.UTF_8);
            return of(server, fhir.newJsonParser().parseResource(CapabilityStatement.class, text));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static Readiness of(CapabilityStatement server, CapabilityStatement needed) {
        Map<Missing, Set<String>> types = new LinkedHashMap<>();
        List<Missing> missing = new ArrayList<>();
        if (!server.getFhirVersion().toCode().startsWith("4.0")) {
            missing.add(new Missing(
                    true, "FHIR R4; it speaks " + server.getFhirVersion().toCode()));
        }
        Offered offered = new Offered(server.getRestFirstRep());
        needed.getRestFirstRep().getInteraction().stream()
                .map(each -> each.getCode())
                .filter(each -> !offered.has(each))
                .forEach(each -> missing.add(new Missing(!offered.impliedBy(each), "interaction " + each.toCode())));
        for (CapabilityStatementRestResourceComponent each :
                needed.getRestFirstRep().getResource()) {
            offered.lacks(each).forEach(lack -> types.computeIfAbsent(lack, any -> new TreeSet<>())
                    .add(each.getType()));
        }
        types.forEach(
                (lack, names) -> missing.add(new Missing(lack.must(), lack.what() + ": " + String.join(", ", names))));
        missing.sort((one, other) -> Boolean.compare(other.must(), one.must()));
        return new Readiness(missing);
    }
}

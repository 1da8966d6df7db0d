package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.ResourceVersionPolicy;
import org.hl7.fhir.r4.model.CapabilityStatement.SystemRestfulInteraction;
import org.hl7.fhir.r4.model.CapabilityStatement.TypeRestfulInteraction;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.junit.jupiter.api.Test;
import org.lensward.record.Fhir;

/** A server that offers just what is needed, and the same with something less. What the statement means: FHIR R4, CapabilityStatement. */
class ReadinessTest {

    private static final FhirContext FHIR = Fhir.r4();

    private static CapabilityStatement needed() {
        try {
            String text = Files.readString(Path.of("fhir-profiles/capability-statements/needed-from-record.json"));
            return FHIR.newJsonParser().parseResource(CapabilityStatement.class, text);
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
    }

    private static Readiness without(Consumer<CapabilityStatement> loss) {
        CapabilityStatement server = needed();
        loss.accept(server);
        return Readiness.of(server, needed());
    }

    private static CapabilityStatementRestResourceComponent type(CapabilityStatement server, String type) {
        return server.getRestFirstRep().getResource().stream()
                .filter(each -> each.getType().equals(type))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void what_is_needed_is_enough() {
        assertThat(without(server -> {}).missing()).isEmpty();
        assertThat(Readiness.of(FHIR, needed()).mayRun()).isTrue();
    }

    @Test
    void no_transactions_no_work() {
        Readiness readiness = without(server -> server.getRestFirstRep()
                .getInteraction()
                .removeIf(each -> each.getCode() == SystemRestfulInteraction.TRANSACTION));
        assertThat(readiness.mayRun()).isFalse();
        assertThat(readiness.missing()).hasToString("[must:   interaction transaction]");
    }

    @Test
    void a_search_parameter_an_interaction_and_a_type_are_named() {
        Readiness readiness = without(server -> {
            type(server, "Observation").getSearchParam().removeIf(each -> each.getName()
                    .equals("_lastUpdated"));
            type(server, "Task").getInteraction().removeIf(each -> each.getCode() == TypeRestfulInteraction.UPDATE);
            server.getRestFirstRep().getResource().removeIf(each -> each.getType()
                    .equals("BodyStructure"));
        });
        assertThat(readiness.mayRun()).isFalse();
        assertThat(readiness.missing())
                .extracting(Readiness.Missing::what)
                .containsExactlyInAnyOrder(
                        "search parameter _lastUpdated: Observation",
                        "interaction update: Task",
                        "type: BodyStructure");
    }

    @Test
    void unguarded_updates_are_told_and_do_not_forbid() {
        Readiness readiness = without(server -> type(server, "Task").setVersioning(ResourceVersionPolicy.VERSIONED));
        assertThat(readiness.mayRun()).isTrue();
        assertThat(readiness.missing()).hasToString("[should: update guarded by If-Match: Task]");
    }

    @Test
    void without_versions_nobody_can_tell_what_a_plan_rests_on() {
        assertThat(without(server -> type(server, "Observation").setVersioning(ResourceVersionPolicy.NOVERSION))
                        .mayRun())
                .isFalse();
    }

    /** HAPI takes batches and says "transaction" alone. */
    @Test
    void a_server_that_takes_transactions_need_not_say_that_it_takes_batches() {
        assertThat(without(server -> server.getRestFirstRep()
                                .getInteraction()
                                .removeIf(each -> each.getCode() == SystemRestfulInteraction.BATCH))
                        .mayRun())
                .isTrue();
    }

    @Test
    void another_fhir_is_refused() {
        assertThat(without(server -> server.setFhirVersion(FHIRVersion._3_0_0)).mayRun())
                .isFalse();
    }
}

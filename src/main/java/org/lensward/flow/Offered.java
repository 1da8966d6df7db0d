package org.lensward.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.ResourceVersionPolicy;
import org.hl7.fhir.r4.model.CapabilityStatement.SystemRestfulInteraction;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.flow.Readiness.Missing;

/** What a server says that it offers. */
record Offered(CapabilityStatementRestComponent rest) {

    /** HL7's own search parameters; others have to be added to a server, and what needs them says so where they are not. */
    private static final String STANDARD = "http://hl7.org/fhir/SearchParameter/";

    boolean has(SystemRestfulInteraction interaction) {
        return rest.getInteraction().stream().anyMatch(each -> each.getCode() == interaction);
    }

    /** Servers that take transactions take batches at the same address, and some do not say so. */
    boolean impliedBy(SystemRestfulInteraction interaction) {
        return interaction == SystemRestfulInteraction.BATCH && has(SystemRestfulInteraction.TRANSACTION);
    }

    /** What is needed of a type and not offered. */
    List<Missing> lacks(CapabilityStatementRestResourceComponent needed) {
        Optional<CapabilityStatementRestResourceComponent> found = rest.getResource().stream()
                .filter(each -> each.getType().equals(needed.getType()))
                .findFirst();
        if (found.isEmpty()) {
            return List.of(new Missing(true, "type"));
        }
        CapabilityStatementRestResourceComponent its = found.get();
        List<Missing> lacks = new ArrayList<>();
        needed.getInteraction().stream()
                .filter(each -> its.getInteraction().stream().noneMatch(other -> other.getCode() == each.getCode()))
                .forEach(each -> lacks.add(
                        new Missing(true, "interaction " + each.getCode().toCode())));
        needed.getSearchParam().stream()
                .filter(each -> its.getSearchParam().stream()
                        .noneMatch(other -> other.getName().equals(each.getName())))
                .forEach(each -> lacks.add(
                        new Missing(each.getDefinition().startsWith(STANDARD), "search parameter " + each.getName())));
        needed.getSearchInclude().stream()
                .map(StringType::getValue)
                .filter(each -> its.getSearchInclude().stream()
                        .noneMatch(other -> other.getValue().equals(each)))
                .forEach(each -> lacks.add(new Missing(false, "_include " + each)));
        lacks.addAll(versions(needed, its));
        return lacks;
    }

    /** Without {@code If-Match} two who write at once are not told apart; without PUT of a new id no plan can be written. */
    private static List<Missing> versions(
            CapabilityStatementRestResourceComponent needed, CapabilityStatementRestResourceComponent its) {
        List<Missing> lacks = new ArrayList<>();
        if (its.getVersioning() == ResourceVersionPolicy.NOVERSION) {
            lacks.add(new Missing(true, "versions"));
        } else if (needed.getVersioning() == ResourceVersionPolicy.VERSIONEDUPDATE
                && its.getVersioning() != ResourceVersionPolicy.VERSIONEDUPDATE) {
            lacks.add(new Missing(false, "update guarded by If-Match"));
        }
        if (needed.getUpdateCreate() && !its.getUpdateCreate()) {
            lacks.add(new Missing(false, "create by PUT under an id of ours"));
        }
        return lacks;
    }
}

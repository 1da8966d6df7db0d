package org.lensward.board.fhir;

import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementKind;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.RestfulCapabilityMode;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import org.lensward.record.Systems;

/** What our own FHIR endpoint answers. */
final class Served {

    private Served() {}

    static CapabilityStatement statement() {
        CapabilityStatement statement = new CapabilityStatement();
        statement.setStatus(PublicationStatus.ACTIVE);
        statement.setDateElement(new DateTimeType("2026-11-25"));
        statement.setKind(CapabilityStatementKind.INSTANCE);
        statement.addInstantiates(Systems.BASE + "/CapabilityStatement/served");
        statement.getSoftware().setName("Lensward");
        statement
                .getImplementation()
                .setDescription("Plans an eye and verifies a lens; the hospital's record holds both.");
        statement.setFhirVersion(FHIRVersion._4_0_1);
        statement.addFormat("json");
        CapabilityStatementRestComponent rest = statement.addRest().setMode(RestfulCapabilityMode.SERVER);
        for (String operation : new String[] {"plan", "verify-lens"}) {
            rest.addOperation().setName(operation).setDefinition(Systems.BASE + "/OperationDefinition/" + operation);
        }
        return statement;
    }
}

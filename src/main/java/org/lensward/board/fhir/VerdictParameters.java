package org.lensward.board.fhir;

import java.util.Locale;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.finding.Finding;
import org.lensward.record.Quantities;
import org.lensward.record.Systems;
import org.lensward.record.bank.ImplantCard;

/**
 * How a step of a lens check went, as Parameters.
 *
 * @param record where the transaction belongs
 * @param written whether it was posted there
 */
record VerdictParameters(RecordAddress record, boolean written) {

    Parameters of(Verified verified) {
        Parameters parameters = new Parameters();
        parameters
                .addParameter()
                .setName("result")
                .setValue(new CodeType(verified.verdict().code()));
        verified.state()
                .ifPresent(state -> parameters.addParameter().setName("state").setValue(new CodeType(state.code())));
        parameters
                .addParameter()
                .setName("written")
                .setValue(new BooleanType(written && verified.transaction().isPresent()));
        verified.differences().forEach(each -> difference(each, parameters.addParameter()));
        verified.transaction()
                .ifPresent(bundle ->
                        parameters.addParameter().setName("transaction").setResource(record.addressed(bundle)));
        verified.carton().ifPresent(unit -> {
            ParametersParameterComponent carton = parameters.addParameter().setName("carton");
            carton.addPart()
                    .setName("unit")
                    .setValue(new Reference(unit.evidence().resource()));
            carton.addPart().setName("state").setValue(new CodeType(unit.state().code()));
        });
        verified.card().ifPresent(card -> card(card, parameters.addParameter()));
        return parameters;
    }

    private static void difference(Finding finding, ParametersParameterComponent difference) {
        difference
                .setName("difference")
                .addPart()
                .setName("code")
                .setValue(new Coding()
                        .setSystem(Systems.FINDING)
                        .setCode(finding.code().code()));
        difference
                .addPart()
                .setName("severity")
                .setValue(new CodeType(finding.severity().name().toLowerCase(Locale.ROOT)));
        text(difference, "message", finding.message());
        text(difference, "remedy", finding.remedy());
        finding.evidence().forEach(each -> text(difference, "evidence", each.toString()));
    }

    private static void card(ImplantCard card, ParametersParameterComponent parameter) {
        parameter.setName("implant-card");
        parameter.addPart().setName("patient").setValue(new Reference(card.patient()));
        text(parameter, "eye", card.eye());
        parameter.addPart().setName("day").setValue(new DateType(card.day().toString()));
        text(parameter, "hospital", card.hospital());
        text(parameter, "model", card.model());
        parameter.addPart().setName("power").setValue(Quantities.dioptres(card.power()));
        card.cylinder()
                .ifPresent(each -> parameter.addPart().setName("cylinder").setValue(Quantities.dioptres(each)));
        card.lot().ifPresent(each -> text(parameter, "lot", each));
        card.serial().ifPresent(each -> text(parameter, "serial", each));
        text(parameter, "udi", card.udi());
    }

    private static void text(ParametersParameterComponent parent, String name, String text) {
        if (!text.isBlank()) {
            parent.addPart().setName(name).setValue(new StringType(text));
        }
    }
}

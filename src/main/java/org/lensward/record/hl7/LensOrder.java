package org.lensward.record.hl7;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.v25.group.ORM_O01_ORDER;
import ca.uhn.hl7v2.model.v25.group.ORM_O01_ORDER_DETAIL;
import ca.uhn.hl7v2.model.v25.message.ORM_O01;
import ca.uhn.hl7v2.model.v25.segment.MSH;
import ca.uhn.hl7v2.model.v25.segment.OBX;
import ca.uhn.hl7v2.model.v25.segment.PID;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestParameterComponent;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.record.Shelf;
import org.lensward.record.incoming.LastingId;
import org.lensward.record.incoming.Site;

/**
 * The lens to implant as an order, ORM^O01 of HL7 2.5: new, changed or cancelled as the request in the record is. The placer order
 * number is the request's id and the control id follows from its version, so that a repeat is told.
 *
 * @param key request and version: what makes it the same order sent again
 * @param message as it is sent, in UTF-8
 */
public record LensOrder(String key, byte[] message) {

    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyyMMddHHmmss'+0000'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /**
     * The order.
     *
     * @param request the request of the primary lens, as the record holds it
     * @param patient its subject
     * @param site by which the patient's identifiers name their authority
     * @param now when it is sent
     */
    public static LensOrder of(DeviceRequest request, Patient patient, Site site, Instant now) {
        String key = Shelf.versionedName(request);
        try {
            ORM_O01 order = new ORM_O01();
            order.initQuickstart("ORM", "O01", "P");
            header(order.getMSH(), LastingId.of("o", key).substring(0, 20), now);
            patient(order.getPATIENT().getPID(), patient, site);
            detail(order.getORDER(), request);
            return new LensOrder(key, order.encode().getBytes(StandardCharsets.UTF_8));
        } catch (HL7Exception | IOException wrong) {
            throw new IllegalStateException("An order is always written: " + key, wrong);
        }
    }

    private static void header(MSH header, String control, Instant now) throws HL7Exception {
        header.getSendingApplication().getNamespaceID().setValue("LENSWARD");
        header.getDateTimeOfMessage().getTime().setValue(TIME.format(now));
        header.getMessageControlID().setValue(control);
        header.getCharacterSet(0).setValue("UNICODE UTF-8");
    }

    private static void patient(PID pid, Patient patient, Site site) throws HL7Exception {
        int sent = 0;
        for (Identifier each : patient.getIdentifier()) {
            for (Map.Entry<String, String> authority : site.systems().entrySet()) {
                if (authority.getValue().equals(each.getSystem())) {
                    pid.getPatientIdentifierList(sent).getIDNumber().setValue(each.getValue());
                    pid.getPatientIdentifierList(sent)
                            .getAssigningAuthority()
                            .getNamespaceID()
                            .setValue(authority.getKey());
                    sent++;
                }
            }
        }
        pid.getPatientName(0)
                .getFamilyName()
                .getSurname()
                .setValue(patient.getNameFirstRep().getFamily());
        pid.getPatientName(0).getGivenName().setValue(patient.getNameFirstRep().getGivenAsSingleString());
    }

    private static void detail(ORM_O01_ORDER order, DeviceRequest request) throws HL7Exception {
        String number = request.getIdElement().getIdPart();
        order.getORC().getOrderControl().setValue(control(request));
        order.getORC().getPlacerOrderNumber().getEntityIdentifier().setValue(number);
        order.getORC().getPlacerOrderNumber().getNamespaceID().setValue("LENSWARD");
        ORM_O01_ORDER_DETAIL detail = order.getORDER_DETAIL();
        detail.getOBR().getSetIDOBR().setValue("1");
        detail.getOBR().getPlacerOrderNumber().getEntityIdentifier().setValue(number);
        detail.getOBR().getPlacerOrderNumber().getNamespaceID().setValue("LENSWARD");
        detail.getOBR().getUniversalServiceIdentifier().getIdentifier().setValue("intraocular-lens");
        detail.getOBR()
                .getUniversalServiceIdentifier()
                .getText()
                .setValue(request.getCodeCodeableConcept().getText());
        detail.getOBR().getUniversalServiceIdentifier().getNameOfCodingSystem().setValue("99LENSWARD");
        int set = 0;
        for (DeviceRequestParameterComponent each : request.getParameter()) {
            parameter(detail.getOBSERVATION(set).getOBX(), each, ++set);
        }
    }

    /** HL7 table 0119. */
    private static String control(DeviceRequest request) {
        if (request.getStatus() != DeviceRequestStatus.ACTIVE) {
            return "CA";
        }
        return "1".equals(request.getMeta().getVersionId()) ? "NW" : "XO";
    }

    private static void parameter(OBX obx, DeviceRequestParameterComponent parameter, int set) throws HL7Exception {
        obx.getSetIDOBX().setValue(String.valueOf(set));
        obx.getObservationIdentifier()
                .getIdentifier()
                .setValue(parameter.getCode().getCodingFirstRep().getCode());
        obx.getObservationIdentifier().getNameOfCodingSystem().setValue("99LENSWARD");
        obx.getObservationResultStatus().setValue("F");
        if (parameter.getValue() instanceof Quantity quantity) {
            obx.getValueType().setValue("NM");
            obx.getObservationValue(0).parse(quantity.getValue().toPlainString());
            obx.getUnits().getIdentifier().setValue(quantity.getCode());
            obx.getUnits().getNameOfCodingSystem().setValue("UCUM");
        } else if (parameter.getValue() instanceof CodeableConcept concept) {
            obx.getValueType().setValue("ST");
            obx.getObservationValue(0)
                    .parse(
                            concept.hasText()
                                    ? concept.getText()
                                    : concept.getCodingFirstRep().getCode());
        }
    }
}

package org.lensward.record.hl7;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.SidedCodes;
import org.lensward.record.Systems;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.LastingId;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Result;
import org.lensward.record.incoming.Results;
import org.lensward.record.incoming.Site;

/** ORU^R01: each OBX under its OBR is a result; those that share an OBX-4 within an order are one Observation. */
final class BiometryMessage {

    /** HL7 table 0085 as FHIR statuses (HL7's own v2-to-FHIR concept map; value from memory). */
    private static final Map<String, ObservationStatus> TABLE_0085 = Map.ofEntries(
            Map.entry("F", ObservationStatus.FINAL),
            Map.entry("U", ObservationStatus.FINAL),
            Map.entry("C", ObservationStatus.CORRECTED),
            Map.entry("A", ObservationStatus.AMENDED),
            Map.entry("P", ObservationStatus.PRELIMINARY),
            Map.entry("R", ObservationStatus.PRELIMINARY),
            Map.entry("S", ObservationStatus.PRELIMINARY),
            Map.entry("I", ObservationStatus.REGISTERED),
            Map.entry("D", ObservationStatus.ENTEREDINERROR),
            Map.entry("W", ObservationStatus.ENTEREDINERROR),
            Map.entry("X", ObservationStatus.CANCELLED));

    private static final Set<ObservationStatus> WITHOUT_VALUE =
            EnumSet.of(ObservationStatus.REGISTERED, ObservationStatus.ENTEREDINERROR, ObservationStatus.CANCELLED);

    private final Message message;
    private final Site site;
    private final Times times;
    private final Map<String, String> ids = new HashMap<>();

    private BiometryMessage(Message message, Site site) {
        this.message = message;
        this.site = site;
        this.times = new Times(site.zone());
    }

    static Incoming read(Message message, Site site) {
        return new BiometryMessage(message, site).read();
    }

    private Incoming read() {
        List<Result> results = new ArrayList<>();
        Optional<Fields> order = Optional.empty();
        for (Fields segment : message.segments()) {
            if (segment.name().equals("OBR")) {
                order = Optional.of(segment);
            } else if (segment.name().equals("OBX")) {
                Fields of = order.orElseThrow(
                        () -> new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, segment.place(), "OBR"));
                results.add(result(of, segment));
            }
        }
        if (results.isEmpty()) {
            throw new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, "OBX", "OBX");
        }
        return new Incoming(
                PatientNamed.in(message, site),
                Results.observations(results, each -> ids.get(each.place()), message.sent(times)),
                false);
    }

    private Result result(Fields order, Fields obx) {
        name(order, obx);
        CodeableConcept code = obx.codes(3).stream()
                .findFirst()
                .map(Coded::concept)
                .orElseThrow(() -> new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, obx.at(3), obx.at(3)));
        ObservationStatus status = status(obx);
        Optional<DateTimeType> taken = times.at(obx, 14, 1).or(() -> times.at(order, 7, 1));
        String subId = obx.text(4);
        return new Result(
                obx.place(),
                subId.isEmpty() ? "" : order.place() + " " + subId,
                code,
                ObservedValue.read(obx, WITHOUT_VALUE.contains(status)),
                eye(order, obx, code),
                status,
                obx.codes(17).stream().findFirst().map(BiometryMessage::method),
                taken);
    }

    /** Filler order number and set id: the same again is the same result. */
    private void name(Fields order, Fields obx) {
        order.required(3);
        String id = LastingId.of("hl7", message.sender(), order.entity(3), obx.required(1));
        if (ids.containsValue(id)) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE, obx.at(1), obx.at(1), "two results share order number and set id");
        }
        ids.put(obx.place(), id);
    }

    private static ObservationStatus status(Fields obx) {
        return Optional.ofNullable(TABLE_0085.get(obx.required(11)))
                .orElseThrow(() -> new RefusedInput(
                        FindingCode.MESSAGE_UNREADABLE, obx.at(11), obx.at(11), "this result status is not known"));
    }

    /** Nearest first: the value's own site, its sided code, then the order's modifiers and what was added to it. */
    private static Optional<Laterality> eye(Fields order, Fields obx, CodeableConcept code) {
        List<Coded> own = obx.codes(20);
        Set<Laterality> site = Sides.of(own);
        if (!own.isEmpty() && site.isEmpty() && SidedCodes.needEye(code)) {
            throw new RefusedInput(FindingCode.MESSAGE_EYE_UNREADABLE, obx.at(20), obx.place());
        }
        Optional<Laterality> eye = Sides.eye(
                obx.place(),
                List.of(
                        site,
                        SidedCodes.of(code, new CodeableConcept()),
                        Sides.of(order.codes(45)),
                        Sides.of(order.codes(46)),
                        Sides.of(order.codes(47))));
        if (eye.isEmpty() && SidedCodes.needEye(code)) {
            throw new RefusedInput(FindingCode.MESSAGE_WITHOUT_EYE, obx.place(), obx.place());
        }
        return eye;
    }

    /** Our own methods have no system of their own in table 0396: 99LENSWARD is the measurements'. */
    private static CodeableConcept method(Coded coded) {
        CodeableConcept method = coded.concept();
        method.getCoding().stream()
                .filter(each -> Systems.MEASUREMENT.equals(each.getSystem()))
                .forEach(each -> each.setSystem(Systems.BIOMETRY_METHOD));
        return method;
    }
}

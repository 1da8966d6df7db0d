package org.lensward.record.bank;

import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.EXPIRY;
import static org.lensward.record.bank.BankRecord.carton;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.record.bank.Implantation.Deviation;

/** A demo booking with its plan on the shared record, and lenses picked for it. */
final class Operations {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();
    static final String BOOKING = "ServiceRequest/booking-01";
    static final String PLAN = "Procedure/plan-booking-01";
    static final OffsetDateTime AT = OffsetDateTime.parse("2026-12-10T10:05:00+01:00");
    static final Deviation TORN = new Deviation("The surgeon", "Posterior capsule torn: lens in the sulcus.");

    private static int cartons;

    private Operations() {}

    /** The booking and its plan as if never operated on. */
    static void plan() throws IOException {
        for (String file : List.of("in.json", "out.json")) {
            Bundle bundle = BankRecord.FHIR
                    .newJsonParser()
                    .parseResource(Bundle.class, Files.readString(Path.of("demo-data/an-ordinary-eye", file)));
            RECORD.client().transaction().withBundle(bundle).execute();
        }
    }

    static String request(String role) {
        return RECORD.read(DeviceRequest.class, "DeviceRequest/plan-booking-01-" + role)
                .getStatus()
                .toCode();
    }

    static Implantation implantation(LensUnit unit, Optional<Deviation> deviation) {
        return new Implantation(BOOKING, name(unit), "The surgeon", "Organization/hospital", AT, deviation);
    }

    static LensUnit reserved(String model, double power) {
        return moved(RECORD.received(delivery(model, power)), new Movement.Reserve(BOOKING, DAY));
    }

    static LensUnit picked(String model, double power) {
        return moved(reserved(model, power), new Movement.Pick(BOOKING, DAY));
    }

    static Delivery delivery(String model, double power) {
        String serial = "implant-" + ++cartons;
        return carton(
                model,
                power,
                new LensUnit.Identity("09521234000013", Optional.of("IMPLANT"), Optional.of(serial), EXPIRY));
    }

    static LensUnit moved(LensUnit unit, Movement... movements) {
        LensUnit moved = unit;
        for (Movement movement : movements) {
            moved = ready(BANK.move(name(unit), movement, CLERK));
        }
        return moved;
    }
}

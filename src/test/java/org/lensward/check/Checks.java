package org.lensward.check;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Laterality;
import org.lensward.eye.Limit;
import org.lensward.finding.Evidence;
import org.lensward.finding.FindingCode;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** A lens check in which all is well, for tests to spoil. */
public final class Checks {

    static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);
    static final String FINGERPRINT = "6f1ed002ab55" + "0".repeat(52);
    static final Carton.Label LABEL = new Carton.Label(
            "09506000134352", Optional.of("L-7"), Optional.of("S-0042"), Optional.of(LocalDate.of(2027, 5, 31)));
    static final Standing NOW = new Standing(FINGERPRINT, "2 at 09:30");

    private Checks() {}

    public static CheckPolicy policy() {
        return new CheckPolicy(
                List.of(Checkpoint.SIGN_IN, Checkpoint.TIME_OUT, Checkpoint.BEFORE_OPENING),
                List.of(Checkpoint.BEFORE_OPENING),
                new Limit<>(Degrees.of(0.5), "common practice, no source: a sheet prints whole degrees"),
                List.of(
                        FindingCode.CHECK_ALLERGIES_DIFFER,
                        FindingCode.CHECK_BACK_UP_ABSENT,
                        FindingCode.CHECK_DAY_DIFFERS));
    }

    static Identity ada() {
        return new Identity(
                Set.of(
                        new Identity.Number("urn:oid:2.25.1", "704-1182"),
                        new Identity.Number("urn:oid:2.25.2", "998 112")),
                Optional.of(LocalDate.of(1960, 1, 31)));
    }

    public static CheckedLens lens(String power) {
        return new CheckedLens("DeviceDefinition/lens-1", Dioptres.parse(power), Optional.empty());
    }

    static Expected expected(Laterality eye, CheckedLens lens) {
        return new Expected(
                new Evidence("Task/plan-b1-check-6f1ed002ab55", "1", ""),
                "ServiceRequest/b1",
                ada(),
                eye,
                FINGERPRINT,
                lens,
                lens.cylinder().map(each -> Degrees.of(5)),
                OPERATION,
                Set.of("Penicillin"),
                List.of(
                        new BackUp(KitRole.SPARE, lens),
                        new BackUp(
                                KitRole.SULCUS,
                                new CheckedLens("DeviceDefinition/lens-2", Dioptres.of(20.5), Optional.empty()))));
    }

    static Expected expected() {
        return expected(Laterality.RIGHT, lens("21.5 D"));
    }

    public static LensUnit unit(CheckedLens lens) {
        return new LensUnit(
                new Evidence("Device/u1", "3", ""),
                lens.model(),
                lens.power(),
                lens.cylinder(),
                new LensUnit.Identity(
                        LABEL.device(),
                        LABEL.lot(),
                        LABEL.serial(),
                        LABEL.expiry().orElseThrow()),
                "Location/store",
                new Owner("Organization/hospital", false),
                UnitState.RESERVED,
                Optional.of("ServiceRequest/b1"));
    }

    /** Everything as the plan expects it. */
    public static Presented right(Checkpoint at, Expected expected) {
        return new Presented(
                expected.patient(),
                EyesRead.all(expected.eye()),
                Optional.of(expected.fingerprint().substring(0, 12)),
                new Carton(
                        "0109506000134352",
                        LABEL,
                        Optional.of(unit(expected.lens())),
                        Optional.of(new Carton.BoxRead(expected.lens(), "Practitioner/nurse-2")),
                        Optional.of(at.packageState())),
                expected.axis(),
                Optional.of(expected.allergies()),
                expected.backUps(),
                new People(Optional.of("Practitioner/nurse-1"), Optional.of("Practitioner/nurse-2")),
                OffsetDateTime.of(2026, 3, 16, 9, 40, 0, 0, ZoneOffset.UTC));
    }
}

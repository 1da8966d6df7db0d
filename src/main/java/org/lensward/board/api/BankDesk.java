package org.lensward.board.api;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.access.SignedIn;
import org.lensward.board.store.StoreWatch;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.label.HumanReadable;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.Owner;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.Delivery;
import org.lensward.record.bank.LensBank;
import org.lensward.record.bank.Lookup;
import org.lensward.record.bank.Recall;
import org.lensward.record.bank.RecalledLot;
import org.lensward.record.bank.RecordName;
import org.lensward.record.bank.Sighting;
import org.lensward.record.bank.Signature;
import org.lensward.record.bank.UnitEvent;

/** What people do with cartons, from a page or from another program. What is refused is a {@link Refusal}. */
public final class BankDesk {

    private final LensBank bank;
    private final StoreWatch watch;
    private final Clock clock;

    public BankDesk(LensBank bank, StoreWatch watch, Clock clock) {
        this.bank = bank;
        this.watch = watch;
        this.clock = clock;
    }

    /** Every carton that can be read, and findings about the others. */
    Outcome<List<LensUnit>> units() {
        return bank.units();
    }

    /** Every carton that can be read; refused where the bank cannot be read at all. */
    public List<LensUnit> all() {
        return Refusal.unless(units());
    }

    /** One carton, by its id. */
    public LensUnit unit(String unit) {
        return Refusal.unless(bank.unit(name(unit)));
    }

    /** What happened to it, the latest first. */
    public List<UnitEvent> history(String unit) {
        return bank.history(name(unit));
    }

    /** What a carton's label says. */
    public CartonLabel label(List<String> scans) {
        return LabelsApi.label(scans, clock);
    }

    /** Takes a carton in. */
    public LensUnit receive(BankApi.Arrival arrival) {
        CartonLabel label = label(arrival.scans());
        LensUnit.Identity identity = label.identity()
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.REQUIRED, "scans", "The label carries no expiry; scan its other barcode, too."));
        Delivery delivery = Field.read(
                "model, location or owner",
                () -> new Delivery(
                        arrival.model(),
                        Field.dioptres("power", arrival.power()),
                        arrival.cylinder().map(text -> Field.dioptres("cylinder", text)),
                        identity,
                        HumanReadable.of(label.raw()),
                        arrival.location(),
                        new Owner(arrival.owner(), arrival.consigned()),
                        LocalDate.now(clock)));
        return told(Refusal.unless(bank.receive(delivery, signed(arrival.by()))));
    }

    /** Moves a carton, if it still is as it was seen. */
    public LensUnit move(String unit, String movement, BankApi.Deed deed) {
        Movement asked = Field.read("movement", () -> movement(movement, deed));
        return told(Refusal.unless(bank.move(new Sighting(name(unit), deed.version()), asked, signed(deed.by()))));
    }

    private LensUnit told(LensUnit unit) {
        watch.moved(unit);
        return unit;
    }

    private Movement movement(String movement, BankApi.Deed deed) {
        LocalDate day = deed.day().orElseGet(() -> LocalDate.now(clock));
        return switch (movement) {
            case "reserve" -> new Movement.Reserve(booking(deed), day);
            case "pick" -> new Movement.Pick(booking(deed), day);
            case "return" -> new Movement.Return(booking(deed));
            case "waste" -> new Movement.Waste(reason(deed));
            case "quarantine" -> new Movement.Quarantine(reason(deed));
            case "release" -> new Movement.Release(reason(deed), day);
            case "carry" -> new Movement.Carry(store(deed));
            default ->
                throw new UnreadableRecord(
                        IssueType.NOTFOUND,
                        "movement",
                        "Cartons are not moved by " + movement
                                + "; they are by reserve, pick, return, waste, quarantine, release, carry.");
        };
    }

    private static String booking(BankApi.Deed deed) {
        return Bookings.name(said(deed.booking(), "booking", "Name the booking."));
    }

    private static String reason(BankApi.Deed deed) {
        return said(deed.reason(), "reason", "Say why.");
    }

    private static String store(BankApi.Deed deed) {
        return RecordName.of("Location", said(deed.to(), "to", "Say where it is carried to."))
                .orElseThrow(() ->
                        new UnreadableRecord(IssueType.VALUE, "to", "A store's id has letters, digits, '-' and '.'."));
    }

    private static String said(Optional<String> text, String field, String otherwise) {
        return text.filter(each -> !each.isBlank())
                .orElseThrow(() -> new UnreadableRecord(IssueType.REQUIRED, field, otherwise));
    }

    /** Every carton of a lot. */
    public Recall recall(String lot, Optional<String> device) {
        return bank.recall(Field.read("lot", () -> new RecalledLot(lot, device)), Lookup.WHOLE_BANK);
    }

    /** Quarantines what a recall finds on the shelves and in theatre; refused where one of them could not be. */
    public void quarantine(Recall recall, BankApi.Deed deed) {
        List<Outcome<LensUnit>> outcomes = bank.quarantine(recall, reason(deed), signed(deed.by()));
        outcomes.forEach(each -> each.value().ifPresent(watch::moved));
        outcomes.stream()
                .filter(outcome -> outcome.value().isEmpty())
                .findFirst()
                .ifPresent(refused -> {
                    throw Refusal.nothingWritten(refused.findings());
                });
    }

    private Signature signed(String told) {
        String who = SignedIn.actor(told);
        return Field.read("by", () -> new Signature(who, clock.instant()));
    }

    private static String name(String unit) {
        return RecordName.of("Device", unit)
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.VALUE, "unit", "A carton's id has letters, digits, '-' and '.'."));
    }
}

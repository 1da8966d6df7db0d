package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
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
import org.lensward.record.bank.Signature;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The lens bank: cartons and their movements, recall by lot. */
@RestController
@RequestMapping("/api/bank")
@Tag(name = "Lens bank")
public final class BankApi {

    private final LensBank bank;
    private final Clock clock;

    public BankApi(LensBank bank, Clock clock) {
        this.bank = bank;
        this.clock = clock;
    }

    /**
     * A carton that arrives. Its power is read from the box by a person: the label does not say it.
     *
     * @param scans of the label
     * @param model the catalogue entry
     * @param power such as {@code 21.5 D}
     * @param cylinder likewise, for a toric lens
     * @param location where it is put
     * @param owner whose it is
     * @param consigned whether on consignment
     * @param by who takes it in
     */
    public record Arrival(
            List<String> scans,
            String model,
            String power,
            Optional<String> cylinder,
            String location,
            String owner,
            boolean consigned,
            String by)
            implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(by);
        }
    }

    /**
     * What is done with a carton.
     *
     * @param by who does it
     * @param booking for which booking, such as {@code booking-01}; to reserve, pick or return
     * @param day of the operation; to reserve or pick
     * @param reason why; to waste, quarantine or release
     */
    public record Deed(String by, Optional<String> booking, Optional<LocalDate> day, Optional<String> reason)
            implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(by);
        }
    }

    /**
     * A recalled carton. Names no patient but by reference.
     *
     * @param unit its Device
     * @param certain whether its lot is recorded
     * @param location where it lies
     * @param state where it stands
     * @param heldFor the booking it is held for
     * @param patients references of who has it in an eye
     * @param operations references of the operations
     */
    public record Recalled(
            String unit,
            boolean certain,
            Optional<String> location,
            Optional<String> state,
            Optional<String> heldFor,
            List<String> patients,
            List<String> operations) {}

    /**
     * The whole answer to a recall.
     *
     * @param lot asked for
     * @param units every carton
     * @param findings what leaves the list in doubt; empty for a complete one
     */
    public record Answer(String lot, List<Recalled> units, List<Found> findings) {}

    @Operation(summary = "Cartons of the bank")
    @GetMapping("/units")
    public List<Carton> units(
            @RequestParam Optional<String> state,
            @RequestParam Optional<String> model,
            @RequestParam Optional<String> location) {
        return Refusal.unless(bank.units()).stream()
                .filter(unit -> state.filter(asked -> !asked.equals(unit.state().code()))
                        .isEmpty())
                .filter(unit ->
                        model.filter(asked -> !asked.equals(unit.model())).isEmpty())
                .filter(unit ->
                        location.filter(asked -> !asked.equals(unit.location())).isEmpty())
                .map(Carton::of)
                .toList();
    }

    @Operation(summary = "One carton")
    @GetMapping("/units/{unit}")
    public Carton unit(@PathVariable String unit) {
        return Carton.of(Refusal.unless(bank.unit(name(unit))));
    }

    @Operation(summary = "Takes a carton in")
    @PostMapping("/units")
    public Carton receive(@RequestBody Arrival arrival) {
        CartonLabel label = LabelsApi.label(arrival.scans(), clock);
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
        return Carton.of(Refusal.unless(bank.receive(delivery, signed(arrival.by()))));
    }

    @Operation(summary = "Reserves, picks, returns, wastes, quarantines or releases a carton")
    @PostMapping("/units/{unit}/{movement}")
    public Carton move(@PathVariable String unit, @PathVariable String movement, @RequestBody Deed deed) {
        Movement asked = Field.read("movement", () -> movement(movement, deed));
        return Carton.of(Refusal.unless(bank.move(name(unit), asked, signed(deed.by()))));
    }

    private Movement movement(String movement, Deed deed) {
        LocalDate day = deed.day().orElseGet(() -> LocalDate.now(clock));
        return switch (movement) {
            case "reserve" -> new Movement.Reserve(booking(deed), day);
            case "pick" -> new Movement.Pick(booking(deed), day);
            case "return" -> new Movement.Return(booking(deed));
            case "waste" -> new Movement.Waste(reason(deed));
            case "quarantine" -> new Movement.Quarantine(reason(deed));
            case "release" -> new Movement.Release(reason(deed), day);
            default ->
                throw new UnreadableRecord(
                        IssueType.NOTFOUND,
                        "movement",
                        "Cartons are not moved by " + movement
                                + "; they are by reserve, pick, return, waste, quarantine, release.");
        };
    }

    private static String booking(Deed deed) {
        return Bookings.name(deed.booking()
                .orElseThrow(() -> new UnreadableRecord(IssueType.REQUIRED, "booking", "Name the booking.")));
    }

    private static String reason(Deed deed) {
        return deed.reason()
                .filter(reason -> !reason.isBlank())
                .orElseThrow(() -> new UnreadableRecord(IssueType.REQUIRED, "reason", "Say why."));
    }

    @Operation(summary = "Every carton of a lot: where it is, who is to have it, who has it in an eye")
    @GetMapping("/recalls")
    public Answer recall(@RequestParam String lot, @RequestParam Optional<String> device) {
        return answer(found(lot, device));
    }

    @Operation(summary = "Quarantines what a recall finds on the shelves and in theatre")
    @PostMapping("/recalls/quarantine")
    public Answer quarantine(@RequestParam String lot, @RequestParam Optional<String> device, @RequestBody Deed deed) {
        bank.quarantine(found(lot, device), reason(deed), signed(deed.by())).stream()
                .filter(outcome -> outcome.value().isEmpty())
                .findFirst()
                .ifPresent(refused -> {
                    throw Refusal.nothingWritten(refused.findings());
                });
        return answer(found(lot, device));
    }

    private Recall found(String lot, Optional<String> device) {
        return bank.recall(Field.read("lot", () -> new RecalledLot(lot, device)), Lookup.WHOLE_BANK);
    }

    private static Answer answer(Recall recall) {
        return new Answer(
                recall.lot(),
                recall.units().stream()
                        .map(each -> new Recalled(
                                each.evidence().resource(),
                                each.certain(),
                                each.location(),
                                each.unit().map(unit -> unit.state().code()),
                                each.unit().flatMap(LensUnit::heldFor),
                                each.patients(),
                                each.operations()))
                        .toList(),
                recall.findings().stream().map(Found::of).toList());
    }

    private Signature signed(String by) {
        return Field.read("by", () -> new Signature(by, clock.instant()));
    }

    private static String name(String unit) {
        return RecordName.of("Device", unit)
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.VALUE, "unit", "A carton's id has letters, digits, '-' and '.'."));
    }
}

package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.bank.Recall;
import org.lensward.record.bank.UnitEvent;
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

    private final BankDesk desk;

    public BankApi(BankDesk desk) {
        this.desk = desk;
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
     * @param to which store, such as {@code north-store}; to carry
     * @param version of the carton that was looked at; if it has another by now, the deed is refused
     */
    public record Deed(
            String by,
            Optional<String> booking,
            Optional<LocalDate> day,
            Optional<String> reason,
            Optional<String> to,
            Optional<String> version)
            implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(by);
        }
    }

    /**
     * Cartons, and what the bank could not read of others.
     *
     * @param cartons those asked for
     * @param findings about the bank as a whole; empty for a complete list
     */
    public record Cartons(List<Carton> cartons, List<Found> findings) {}

    /**
     * One thing that happened to a carton.
     *
     * @param done in words
     * @param who answers for it
     * @param at when
     * @param reason why
     * @param booking for which booking
     * @param to the store it was carried to
     */
    public record Event(
            String done,
            String who,
            Instant at,
            Optional<String> reason,
            Optional<String> booking,
            Optional<String> to) {

        static Event of(UnitEvent event) {
            return new Event(event.done(), event.who(), event.at(), event.reason(), event.booking(), event.store());
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

    @Operation(summary = "Cartons of the bank, and what of it could not be read")
    @GetMapping("/units")
    public Cartons units(
            @RequestParam Optional<String> state,
            @RequestParam Optional<String> model,
            @RequestParam Optional<String> location) {
        Outcome<List<LensUnit>> bank = desk.units();
        return new Cartons(
                Refusal.unless(bank).stream()
                        .filter(unit -> is(state, unit.state().code()))
                        .filter(unit -> is(model, unit.model()))
                        .filter(unit -> is(location, unit.location()))
                        .map(Carton::of)
                        .toList(),
                bank.findings().stream().map(Found::of).toList());
    }

    private static boolean is(Optional<String> asked, String it) {
        return asked.filter(each -> !each.equals(it)).isEmpty();
    }

    @Operation(summary = "One carton")
    @GetMapping("/units/{unit}")
    public Carton unit(@PathVariable String unit) {
        return Carton.of(desk.unit(unit));
    }

    @Operation(summary = "What happened to a carton, the latest first")
    @GetMapping("/units/{unit}/history")
    public List<Event> history(@PathVariable String unit) {
        return desk.history(unit).stream().map(Event::of).toList();
    }

    @Operation(summary = "Takes a carton in")
    @PostMapping("/units")
    public Carton receive(@RequestBody Arrival arrival) {
        return Carton.of(desk.receive(arrival));
    }

    @Operation(
            summary =
                    "Reserves, picks, returns, wastes, quarantines or releases a carton, or carries it to another store")
    @PostMapping("/units/{unit}/{movement}")
    public Carton move(@PathVariable String unit, @PathVariable String movement, @RequestBody Deed deed) {
        return Carton.of(desk.move(unit, movement, deed));
    }

    @Operation(summary = "Every carton of a lot: where it is, who is to have it, who has it in an eye")
    @GetMapping("/recalls")
    public Answer recall(@RequestParam String lot, @RequestParam Optional<String> device) {
        return answer(desk.recall(lot, device));
    }

    @Operation(summary = "Quarantines what a recall finds on the shelves and in theatre")
    @PostMapping("/recalls/quarantine")
    public Answer quarantine(@RequestParam String lot, @RequestParam Optional<String> device, @RequestBody Deed deed) {
        desk.quarantine(desk.recall(lot, device), deed);
        return answer(desk.recall(lot, device));
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
}

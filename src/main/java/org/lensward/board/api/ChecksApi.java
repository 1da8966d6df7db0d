package org.lensward.board.api;

import static org.lensward.finding.FindingCode.CHECK_SCAN_UNREADABLE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;

import com.fasterxml.jackson.databind.JsonNode;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.bank.Implantation;
import org.lensward.record.bank.LensBank;
import org.lensward.record.bank.Signature;
import org.lensward.record.check.LensChecks;
import org.lensward.record.check.StoredCheck;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * The lens check, step by step. A check and a carton are two resources with a version each: the check is written first, then the carton is
 * moved. A repeat of the same step changes nothing in the check and finishes what was left of the move; the implant card is given once,
 * when the implantation is recorded.
 */
@RestController
@RequestMapping("/api/checks")
@Tag(name = "Lens check")
public final class ChecksApi {

    private static final Evidence SCAN = new Evidence("scan", "", "");

    private final Bookings bookings;
    private final LensChecks checks;
    private final LensBank bank;
    private final Clock clock;

    public ChecksApi(Bookings bookings, LensChecks checks, LensBank bank, Clock clock) {
        this.bookings = bookings;
        this.checks = checks;
        this.bank = bank;
        this.clock = clock;
    }

    /**
     * What people present at a checkpoint.
     *
     * @param scans of the carton, one text for each barcode
     * @param presented the fields that the command {@code check --help} lists
     * @param implanted at sign-out: surgeon and hospital
     */
    public record Step(List<String> scans, JsonNode presented, Optional<Implanted> implanted) implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(presented.at("/people/reader").asText()).filter(name -> !name.isEmpty());
        }
    }

    /**
     * Who implanted the lens, and where.
     *
     * @param surgeon as the record refers to them, or a name
     * @param hospital likewise
     */
    public record Implanted(String surgeon, String hospital) {}

    /**
     * How the step went.
     *
     * @param check where the lens check stands
     * @param changed whether the check was written
     * @param carton the carton, as the bank has it now
     * @param card the patient's implant card, at sign-out
     */
    public record Passed(String check, boolean changed, Optional<Carton> carton, Optional<ImplantCard> card) {}

    @Operation(summary = "Where a booking's lens check stands")
    @GetMapping("/{booking}")
    public Standing check(@PathVariable String booking) {
        String name = Bookings.name(booking);
        StoredCheck stored = checks.find(bookings.gather(name), name)
                .orElseThrow(() -> new UnreadableRecord(IssueType.NOTFOUND, name, "No lens check is open for it."));
        return new Standing(stored.progress().state().code(), false);
    }

    @Operation(
            summary = "Presents patient, eye and carton at a checkpoint; a difference stops the check and names each")
    @PostMapping("/{booking}/{checkpoint}")
    public Passed present(@PathVariable String booking, @PathVariable String checkpoint, @RequestBody Step step) {
        String name = Bookings.name(booking);
        Checkpoint at = Checkpoint.of(checkpoint)
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.NOTFOUND, "checkpoint", "There is no checkpoint " + checkpoint + "."));
        CartonLabel label = LabelsApi.label(step.scans(), clock);
        whole(label);
        PresentedJson told = PresentedJson.of(step.presented());
        LensUnit unit = unit(bank.units(), label, name)
                .orElseThrow(
                        () -> Refusal.nothingWritten(List.of(Finding.of(UNIT_NOT_IN_BANK, SCAN, "with this label"))));
        Attempt attempt = new Attempt(at, told.with(label, Optional.of(unit)), told.exemption());
        if (at == Checkpoint.SIGN_OUT && step.implanted().isEmpty()) {
            throw new UnreadableRecord(IssueType.REQUIRED, "implanted", "Sign-out names surgeon and hospital.");
        }
        Standing now = PlansApi.standing(bookings.act(name, (each, gathered) -> each.present(gathered, name, attempt)));
        return moved(name, at, attempt, unit, step, now);
    }

    /** Half a label tells no carton from its neighbours; people scan again before anything is judged. */
    private static void whole(CartonLabel label) {
        if (label.identity().isEmpty()
                || label.lot().isEmpty() && label.serial().isEmpty()) {
            throw Refusal.nothingWritten(List.of(
                    Finding.of(CHECK_SCAN_UNREADABLE, SCAN, "it gives no expiry, or neither lot nor serial number")));
        }
    }

    private Passed moved(String name, Checkpoint at, Attempt attempt, LensUnit unit, Step step, Standing now) {
        String carton = unit.evidence().resource();
        Signature signed = new Signature(attempt.presented().people().reader().orElse("unnamed"), clock.instant());
        Optional<ImplantCard> card = Optional.empty();
        if (at == Checkpoint.PICK) {
            LocalDate day = attempt.presented().at().toLocalDate();
            if (unit.state() == UnitState.AVAILABLE) {
                Refusal.unless(bank.move(carton, new Movement.Reserve(name, day), signed));
            }
            Refusal.unless(bank.move(carton, new Movement.Pick(name, day), signed));
        } else if (at == Checkpoint.SIGN_OUT && unit.state() != UnitState.IMPLANTED) {
            Implanted by = step.implanted().orElseThrow();
            card = Optional.of(Refusal.unless(bank.implant(
                    new Implantation(
                            name,
                            carton,
                            by.surgeon(),
                            by.hospital(),
                            attempt.presented().at(),
                            Optional.empty()),
                    signed)));
        }
        return new Passed(now.check(), now.changed(), bank.unit(carton).value().map(Carton::of), card);
    }

    /** The bank's carton with that label; of several alike the one held for the booking. */
    public static Optional<LensUnit> unit(Outcome<List<LensUnit>> bank, CartonLabel label, String booking) {
        List<LensUnit> alike = bank.value().orElse(List.of()).stream()
                .filter(unit -> label.identity().filter(unit.identity()::equals).isPresent())
                .toList();
        return alike.stream()
                .filter(unit -> unit.heldFor().filter(booking::equals).isPresent())
                .findFirst()
                .or(() -> alike.stream().findFirst());
    }
}

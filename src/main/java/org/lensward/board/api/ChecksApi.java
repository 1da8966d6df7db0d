package org.lensward.board.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.board.check.CartonMoves;
import org.lensward.board.check.Implanted;
import org.lensward.board.check.Scanned;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.bank.LensBank;
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

    private final Bookings bookings;
    private final LensChecks checks;
    private final LensBank bank;
    private final CartonMoves moves;
    private final Clock clock;

    public ChecksApi(Bookings bookings, LensChecks checks, LensBank bank, Clock clock) {
        this.bookings = bookings;
        this.checks = checks;
        this.bank = bank;
        this.moves = new CartonMoves(bank, clock);
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
        PresentedJson told = PresentedJson.of(step.presented());
        Scanned scanned = Refusal.unless(Scanned.ofTheBank(label, bank::units, name));
        Attempt attempt = new Attempt(at, told.with(scanned), told.exemption());
        if (at == Checkpoint.SIGN_OUT && step.implanted().isEmpty()) {
            throw new UnreadableRecord(IssueType.REQUIRED, "implanted", "Sign-out names surgeon and hospital.");
        }
        Standing now = PlansApi.standing(bookings.act(name, (each, gathered) -> each.present(gathered, name, attempt)));
        LensUnit unit = scanned.unit().orElseThrow();
        Optional<ImplantCard> card = Refusal.unless(
                moves.after(name, attempt, unit, () -> step.implanted().orElseThrow()));
        return new Passed(now.check(), now.changed(), moves.now(unit).map(Carton::of), card);
    }
}

package org.lensward.board.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.board.step.Implanted;
import org.lensward.check.Checkpoint;
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

/** The lens check, step by step. The implant card is given once, when the implantation is recorded. */
@RestController
@RequestMapping("/api/checks")
@Tag(name = "Lens check")
public final class ChecksApi {

    private final Bookings bookings;
    private final LensChecks checks;
    private final NursesDesk nurses;

    public ChecksApi(Bookings bookings, LensChecks checks, LensBank bank, TheatreClock clock) {
        this.bookings = bookings;
        this.checks = checks;
        this.nurses = new NursesDesk(bookings, bank, clock.clock());
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
     * Another lens than the planned one in the eye.
     *
     * @param scans of its carton
     * @param surgeon who implanted it
     * @param hospital where
     * @param clinician who decided
     * @param reason why
     * @param by who records it
     */
    public record Deviation(
            List<String> scans, String surgeon, String hospital, String clinician, String reason, String by)
            implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(by);
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
            summary = "Presents patient, eye and carton at a checkpoint; a difference stops the check and names each",
            description = "The time is the server's; presented.at is not looked at.")
    @PostMapping("/{booking}/{checkpoint}")
    public Passed present(@PathVariable String booking, @PathVariable String checkpoint, @RequestBody Step step) {
        return nurses.present(Bookings.name(booking), checkpoint(checkpoint), step);
    }

    /** The checkpoint of that code. */
    public static Checkpoint checkpoint(String code) {
        return Checkpoint.of(code)
                .orElseThrow(() ->
                        new UnreadableRecord(IssueType.NOTFOUND, "checkpoint", "There is no checkpoint " + code + "."));
    }

    @Operation(
            summary = "Records that another lens than the planned one is in the eye, with who decided so and why",
            description = "The lens check stays as it stands; the operation is completed and the implant card given.")
    @PostMapping("/{booking}/implanted-instead")
    public ImplantCard implantedInstead(@PathVariable String booking, @RequestBody Deviation deviation) {
        return nurses.implantedInstead(Bookings.name(booking), deviation, deviation.by());
    }
}

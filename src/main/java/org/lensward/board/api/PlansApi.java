package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.DaySheet;
import org.lensward.board.DaySheets;
import org.lensward.board.TheatreList;
import org.lensward.check.CheckState;
import org.lensward.flow.RecordClient;
import org.lensward.plan.Policy;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;
import org.lensward.record.check.LensChange;
import org.lensward.record.check.LensChecks;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Plans and the surgeon's word on them. */
@RestController
@RequestMapping("/api")
@Tag(name = "Plans")
public final class PlansApi {

    private final RecordClient client;
    private final Bookings bookings;
    private final SurgeonsDesk surgeons;
    private final LensChecks checks;
    private final Policy policy;

    public PlansApi(RecordClient client, Bookings bookings, LensChecks checks, Policy policy) {
        this.client = client;
        this.bookings = bookings;
        this.surgeons = new SurgeonsDesk(bookings);
        this.checks = checks;
        this.policy = policy;
    }

    /**
     * One eye's plan in short.
     *
     * @param booking whose
     * @param state ready, provisional, withheld; planning while there is none
     * @param fingerprint of the plan
     * @param lens model and power of the primary lens
     * @param check where its lens check stands
     * @param findings each with its remedy, gravest first
     */
    public record Plan(
            String booking,
            String state,
            Optional<String> fingerprint,
            Optional<String> lens,
            Optional<String> check,
            List<Issue> findings) {}

    /**
     * A stored finding.
     *
     * @param code what was found
     * @param message with the particulars
     * @param remedy what a person does about it
     */
    public record Issue(String code, String message, String remedy) {}

    /**
     * One theatre's day.
     *
     * @param day the date
     * @param theatre where
     * @param order as it is suggested
     * @param bring for the eyes that have a lens planned
     * @param lenses each kind with its number
     */
    public record Day(String day, String theatre, List<Turn> order, List<Thing> bring, Map<String, Integer> lenses) {

        static Day of(DaySheet sheet) {
            return new Day(
                    sheet.day(),
                    sheet.theatre(),
                    sheet.turns().stream()
                            .map(turn -> new Turn(turn.eye().booking(), turn.reasons()))
                            .toList(),
                    sheet.bring().things().stream()
                            .map(thing -> new Thing(thing.count(), thing.item().code(), thing.particulars()))
                            .toList(),
                    sheet.lenses());
        }
    }

    /**
     * One eye's turn.
     *
     * @param booking whose
     * @param reasons why here
     */
    public record Turn(String booking, List<String> reasons) {}

    /**
     * Something to bring.
     *
     * @param count how many
     * @param item what kind of thing
     * @param particulars which one
     */
    public record Thing(int count, String item, String particulars) {}

    /**
     * A surgeon's word.
     *
     * @param surgeon as the record refers to them
     * @param reason why; not needed to confirm
     */
    public record Word(String surgeon, Optional<String> reason) implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(surgeon);
        }

        Decision decision() {
            return new Decision(surgeon, reason.orElse(""));
        }
    }

    /**
     * Another target or lens.
     *
     * @param surgeon who wants it
     * @param reason why
     * @param target such as {@code -0.50 D}
     * @param lensModel such as {@code DeviceDefinition/lens-1}
     */
    public record Change(String surgeon, String reason, Optional<String> target, Optional<String> lensModel)
            implements NamesActor {

        @Override
        public Optional<String> actor() {
            return Optional.of(surgeon);
        }
    }

    /**
     * Where the lens check stands now.
     *
     * @param check its state
     * @param changed whether anything was written
     */
    public record Standing(String check, boolean changed) {}

    @Operation(summary = "Each theatre's day: the order suggested, with reasons, and what to bring")
    @GetMapping("/days/{day}")
    public List<Day> day(@PathVariable String day) {
        return DaySheets.of(new Shelf(client.gather(TheatreList.QUESTIONS)), policy.preparation()).stream()
                .filter(sheet -> sheet.day().equals(day))
                .map(Day::of)
                .toList();
    }

    @Operation(summary = "One eye's plan, its findings and where its lens check stands")
    @GetMapping("/plans/{booking}")
    public Plan plan(@PathVariable String booking) {
        String name = Bookings.name(booking);
        Bundle gathered = bookings.gather(name);
        StoredPlan stored = StoredPlan.all(new Shelf(gathered))
                .filter(each -> Shelf.name(each.booking()).equals(name))
                .findFirst()
                .orElseThrow(() -> new UnreadableRecord(IssueType.NOTFOUND, name, "It is no booking of lens surgery."));
        return new Plan(
                name,
                stored.plan().map(StoredPlan::state).orElse("planning"),
                stored.plan().map(StoredPlan::fingerprint),
                stored.primary().map(lens -> lens.getCodeCodeableConcept().getText() + " " + StoredPlan.power(lens)),
                checks.find(gathered, name)
                        .map(check -> check.progress().state().code()),
                stored.issues().stream().map(PlansApi::issue).toList());
    }

    private static Issue issue(DetectedIssue issue) {
        return new Issue(
                issue.getCode().getCodingFirstRep().getCode(),
                issue.getDetail(),
                issue.getMitigationFirstRep().getAction().getText());
    }

    @Operation(summary = "A surgeon confirms the plan; only then can a lens be picked")
    @PostMapping("/plans/{booking}/confirmation")
    public Standing confirm(@PathVariable String booking, @RequestBody Word word) {
        return surgeons.confirm(Bookings.name(booking), Seen.nothing(), word.surgeon());
    }

    @Operation(summary = "A surgeon does not confirm the plan, or takes the confirmation back")
    @PostMapping("/plans/{booking}/refusal")
    public Standing refuse(@PathVariable String booking, @RequestBody Word word) {
        return surgeons.refuse(Bookings.name(booking), Seen.nothing(), word.decision());
    }

    @Operation(summary = "After a stop a surgeon chooses the planned lens again: a new check opens")
    @PostMapping("/plans/{booking}/new-choice")
    public Standing chooseAgain(@PathVariable String booking, @RequestBody Word word) {
        return surgeons.chooseAgain(Bookings.name(booking), Seen.nothing(), word.decision());
    }

    @Operation(summary = "A surgeon wants another target or lens: the eye is planned again and the old check is void")
    @PostMapping("/plans/{booking}/change")
    public Standing change(@PathVariable String booking, @RequestBody Change change) {
        LensChange wanted =
                new LensChange(change.target().map(text -> Field.dioptres("target", text)), change.lensModel());
        return surgeons.change(
                Bookings.name(booking), Seen.nothing(), new Decision(change.surgeon(), change.reason()), wanted);
    }

    static Standing standing(CheckAnswer answer) {
        if (answer instanceof CheckAnswer.Write write && write.findings().isEmpty()) {
            return new Standing(write.state().code(), true);
        }
        if (answer instanceof CheckAnswer.Unchanged before) {
            return new Standing(before.state().code(), false);
        }
        if (answer instanceof CheckAnswer.Write write) {
            throw write.state() == CheckState.FAILED ? Refusal.stopped(write) : Refusal.renewed(answer.findings());
        }
        throw Refusal.nothingWritten(answer.findings());
    }
}

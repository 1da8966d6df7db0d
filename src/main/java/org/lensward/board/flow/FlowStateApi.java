package org.lensward.board.flow;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.WouldWrite;
import org.lensward.record.UnreadableRecord;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** How the flow stands, replay of what was set aside, and the dry run. */
@RestController
@RequestMapping("/api/flow")
@Tag(name = "Flow")
public final class FlowStateApi {

    private final FlowDesk desk;

    public FlowStateApi(FlowDesk desk) {
        this.desk = desk;
    }

    /**
     * What to take up again: one by kind and name, or all of a reason.
     *
     * @param kind "booking" or "message"
     * @param name as the flow's sheet has it
     * @param reason as the flow's sheet has it
     */
    public record Replay(Optional<String> kind, Optional<String> name, Optional<String> reason) {}

    /**
     * How many were taken up again.
     *
     * @param count of them
     */
    public record Taken(int count) {}

    /**
     * The switch.
     *
     * @param on whether nothing is to be written to the record
     */
    public record Switch(boolean on) {}

    @Operation(summary = "Queues with their ages, the last look, the record, certificates, what is set aside, versions")
    @GetMapping
    public FlowSheet flow() {
        return desk.sheet();
    }

    @Operation(summary = "Takes up one that was set aside, or all that were for one reason")
    @PostMapping("/replay")
    public Taken replay(@RequestBody Replay asked) {
        if (asked.reason().isPresent()) {
            return new Taken(desk.replayAll(asked.reason().get()));
        }
        desk.replay(said(asked.kind(), "kind"), said(asked.name(), "name"));
        return new Taken(1);
    }

    private static String said(Optional<String> text, String field) {
        return text.orElseThrow(
                () -> new UnreadableRecord(IssueType.REQUIRED, field, "Name one by kind and name, or give a reason."));
    }

    @Operation(summary = "What a dry run would have written, one for each booking, the latest first")
    @GetMapping("/dry-run")
    public List<WouldWrite> wouldWrite() {
        return desk.wouldWrite();
    }

    @Operation(summary = "Switches writing to the record off (on: true) or on")
    @PostMapping("/dry-run")
    public Switch dryRun(@RequestBody Switch wanted) {
        desk.dryRun(wanted.on());
        return wanted;
    }
}

package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.lensward.flow.FlowQueues;
import org.lensward.flow.HintSettings;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** What may be asked of the flow from outside: to plan one booking again, and to look at the record now. */
@RestController
@RequestMapping("/api")
@Tag(name = "Flow")
public final class FlowApi {

    private final FlowQueues flow;
    private final HintSettings hints;

    public FlowApi(FlowQueues flow, HintSettings hints) {
        this.flow = flow;
        this.hints = hints;
    }

    /**
     * That a booking is queued.
     *
     * @param booking whose
     */
    public record Queued(String booking) {}

    @Operation(summary = "One booking is planned again; a plan that still holds is left as it is")
    @PostMapping("/bookings/{booking}/replan")
    @ResponseStatus(HttpStatus.ACCEPTED)
    public Queued replan(@PathVariable String booking) {
        String name = Bookings.name(booking);
        flow.replan(name);
        return new Queued(name);
    }

    /** The body is not read: what changed is looked up in the record. */
    @Operation(
            summary =
                    "A FHIR Subscription's notification: the record is looked at now; the header X-Lensward-Hint shows the secret")
    @RequestMapping(
            path = {"/hints", "/hints/{type}/{id}"},
            method = {RequestMethod.POST, RequestMethod.PUT})
    public ResponseEntity<Void> hint(@RequestHeader(name = HintSettings.HEADER, defaultValue = "") String shown) {
        if (hints.secret().isEmpty()) {
            return ResponseEntity.notFound().build();
        }
        if (!hints.secret().isSame(shown)) {
            return ResponseEntity.status(HttpStatus.UNAUTHORIZED).build();
        }
        flow.lookNow();
        return ResponseEntity.noContent().build();
    }
}

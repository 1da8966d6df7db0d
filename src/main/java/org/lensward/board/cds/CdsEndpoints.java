package org.lensward.board.cds;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import org.lensward.board.cds.Doorkeeper.Admitted;
import org.lensward.board.cds.ServiceDescription.Services;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The addresses of CDS Hooks 2.0: discovery, the services, their feedback. */
@RestController
@RequestMapping(path = "/cds-services", produces = MediaType.APPLICATION_JSON_VALUE)
final class CdsEndpoints {

    private final List<HookService> services;
    private final Doorkeeper door;
    private final ObjectMapper json;
    private final FeedbackTrail trail;

    CdsEndpoints(List<HookService> services, Doorkeeper door, ObjectMapper json, FeedbackTrail trail) {
        this.services = List.copyOf(services);
        this.door = door;
        this.json = json;
        this.trail = trail;
    }

    /** Which services there are; anybody may know. */
    @GetMapping
    Services discover() {
        return new Services(services.stream().map(HookService::description).toList());
    }

    /** What a service says to a call. */
    @PostMapping(path = "/{id}", consumes = MediaType.APPLICATION_JSON_VALUE)
    Cards call(@PathVariable("id") String id, HttpServletRequest request) throws IOException {
        HookService service = service(id);
        HookCall call = HookCall.read(json, door.admit(request, id).body());
        if (!call.hook().equals(service.description().hook())) {
            throw Refusal.malformed("This service is not for that hook.");
        }
        return new Cards(service.cards(call));
    }

    /** What users did with cards. Whether its token is made out to the service or to this address, CDS Hooks leaves open. */
    @PostMapping(path = "/{id}/feedback", consumes = MediaType.APPLICATION_JSON_VALUE)
    void feedback(@PathVariable("id") String id, HttpServletRequest request) throws IOException {
        service(id);
        Admitted admitted = door.admit(request, id, id + "/feedback");
        trail.write(id, admitted.caller(), Feedback.read(HookCall.tree(json, admitted.body())));
    }

    private HookService service(String id) {
        return services.stream()
                .filter(each -> each.description().id().equals(id))
                .findFirst()
                .orElseThrow(Refusal::unknownService);
    }
}

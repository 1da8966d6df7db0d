package org.lensward.board.flow;

import java.time.Clock;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.lensward.board.page.Page;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** For hospital IT: what waits, what was set aside and why, how the record does, and the dry run. */
@Page
public final class FlowPage {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss");

    private final FlowDesk desk;
    private final Clock clock;

    public FlowPage(FlowDesk desk, Clock clock) {
        this.desk = desk;
        this.clock = clock;
    }

    @GetMapping("/flow")
    String flow(@RequestParam Optional<String> reason, Model model) {
        return shown(model, reason, "flow");
    }

    /** The same, now. */
    @GetMapping("/flow/news")
    String news(@RequestParam Optional<String> reason, Model model) {
        return shown(model, reason, "flow :: sheet");
    }

    @PostMapping("/flow/replay")
    String replay(
            @RequestParam String kind, @RequestParam String name, @RequestParam Optional<String> reason, Model model) {
        desk.replay(kind, name);
        model.addAttribute("done", name + " is on its way again.");
        return shown(model, reason, "flow :: sheet");
    }

    @PostMapping("/flow/replay-all")
    String replayAll(@RequestParam String reason, Model model) {
        int count = desk.replayAll(reason);
        model.addAttribute("done", count + (count == 1 ? " is" : " are") + " on their way again.");
        return shown(model, Optional.empty(), "flow :: sheet");
    }

    @PostMapping("/flow/dry-run")
    String dryRun(@RequestParam boolean on, Model model) {
        desk.dryRun(on);
        model.addAttribute(
                "done",
                on
                        ? "Nothing is written to the record now."
                        : "The record is written again; every booking is looked at.");
        return shown(model, Optional.empty(), "flow :: sheet");
    }

    private String shown(Model model, Optional<String> reason, String view) {
        FlowSheet sheet = desk.sheet();
        Optional<String> only = reason.filter(each -> !each.isEmpty());
        model.addAttribute("sheet", sheet);
        model.addAttribute("time", TIME.format(sheet.at().atZone(clock.getZone())));
        model.addAttribute("reason", only.orElse(""));
        model.addAttribute(
                "shown",
                sheet.setAside().stream()
                        .filter(each -> only.filter(asked -> !asked.equals(each.reason()))
                                .isEmpty())
                        .limit(200)
                        .toList());
        model.addAttribute("reports", desk.wouldWrite().stream().limit(50).toList());
        return view;
    }
}

package org.lensward.board.outcome;

import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.lensward.board.access.SignedIn;
import org.lensward.board.page.Page;
import org.lensward.flow.RecordClient;
import org.lensward.outcome.constant.Proposal;
import org.lensward.record.outcome.AdoptedConstant;
import org.lensward.record.outcome.ConstantAdoption;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** How operated eyes then saw. Reading the record takes its time, so that the page shows what was read last, with its hour. */
@Page
public final class OutcomePage {

    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private final OutcomeView view;
    private final RecordClient client;
    private final Clock clock;

    public OutcomePage(OutcomeView view, RecordClient client, Clock clock) {
        this.view = view;
        this.client = client;
        this.clock = clock;
    }

    @GetMapping("/outcomes")
    String outcomes(Model model) {
        Optional<OutcomeView.Seen> seen = view.now();
        model.addAttribute("sheet", seen.map(each -> new OutcomeSheet(each.study())));
        model.addAttribute(
                "at",
                seen.map(each -> HOUR.format(each.at().atZone(clock.getZone()))).orElse(""));
        model.addAttribute("busy", view.busy());
        model.addAttribute("failed", view.failed());
        return "outcomes";
    }

    @PostMapping("/outcomes/read")
    String read() {
        view.read();
        return "redirect:/outcomes";
    }

    /** The clinician is whoever has signed in; nobody adopts in another's name. */
    @PostMapping("/outcomes/adopt")
    String adopt(@RequestParam String constant, @RequestParam String version, RedirectAttributes answer) {
        Optional<String> clinician =
                SignedIn.now().filter(SignedIn::person).map(SignedIn::name).filter(name -> !name.isBlank());
        Optional<Proposal> proposal = view.now().flatMap(each -> each.study().proposals().stream()
                .filter(one -> ConstantAdoption.name(one).equals(constant))
                .findFirst());
        String said = clinician.isEmpty() || proposal.isEmpty() || version.isBlank()
                ? "Nothing was adopted: a constant that stands here, a version and a clinician's name are needed."
                : AdoptedConstant.of(client, proposal.get())
                        .by(clinician.get(), LocalDate.now(clock), version, clock.instant());
        answer.addFlashAttribute("said", said);
        return "redirect:/outcomes";
    }
}

package org.lensward.board.check;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.lensward.board.access.SignedIn;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.ChecksApi;
import org.lensward.board.api.ChecksApi.Deviation;
import org.lensward.board.api.LabelsApi;
import org.lensward.board.api.NursesDesk;
import org.lensward.board.api.Refusal;
import org.lensward.board.api.TheatreClock;
import org.lensward.board.page.Page;
import org.lensward.check.Checkpoint;
import org.lensward.record.bank.LensBank;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The lens check in theatre: one question at a time, for gloves and a scanner. */
@Page
public final class CheckPage {

    private final StandingChecks checks;
    private final NursesDesk nurses;
    private final TheatreClock clock;
    private final CheckPageSettings settings;

    CheckPage(StandingChecks checks, Bookings bookings, LensBank bank, TheatreClock clock, CheckPageSettings settings) {
        this.checks = checks;
        this.nurses = new NursesDesk(bookings, bank, clock.clock());
        this.clock = clock;
        this.settings = settings;
    }

    @GetMapping("/check/{booking}")
    String check(@PathVariable String booking, Model model) {
        model.addAttribute("view", checks.of(Bookings.name(booking)).view());
        model.addAttribute("separator", settings.separator());
        return "check";
    }

    /** What the barcodes scanned so far say, and whether they suffice. */
    @PostMapping("/check/{booking}/label")
    String label(@RequestParam MultiValueMap<String, String> given, Model model) {
        try {
            List<String> scans = given.getOrDefault("scan", List.of());
            model.addAttribute("label", Optional.of(LabelsApi.read(scans, clock.clock())));
            model.addAttribute("fault", Optional.empty());
        } catch (Refusal unreadable) {
            model.addAttribute("label", Optional.empty());
            model.addAttribute("fault", Optional.of(unreadable.findings().get(0)));
        }
        return "check-label";
    }

    @PostMapping("/check/{booking}/{checkpoint}")
    ModelAndView present(
            @PathVariable String booking,
            @PathVariable String checkpoint,
            @RequestParam MultiValueMap<String, String> given) {
        Checkpoint at = ChecksApi.checkpoint(checkpoint);
        String name = Bookings.name(booking);
        Answers answers = new Answers(given, checks.of(name).expected(), me());
        return answered(
                booking, () -> CheckOutcome.of(at, nurses.present(name, at, answers.step(at, settings.hospital()))));
    }

    @PostMapping("/check/{booking}/implanted-instead")
    ModelAndView instead(@PathVariable String booking, @RequestParam MultiValueMap<String, String> given) {
        String name = Bookings.name(booking);
        Answers answers = new Answers(given, checks.of(name).expected(), me());
        Deviation deviation = new Deviation(
                answers.scans(),
                first(given, "surgeon"),
                settings.hospital(),
                first(given, "clinician"),
                first(given, "reason"),
                me());
        return answered(booking, () -> CheckOutcome.instead(nurses.implantedInstead(name, deviation, me())));
    }

    /** A refusal fills the page, too, and is a refusal for the audit trail. */
    private static ModelAndView answered(String booking, Supplier<CheckOutcome> step) {
        ModelAndView answer = new ModelAndView("check-outcome");
        answer.addObject("key", booking);
        try {
            answer.addObject("outcome", step.get());
        } catch (Refusal refusal) {
            answer.addObject("outcome", CheckOutcome.of(refusal));
            answer.setStatus(refusal.status());
        }
        return answer;
    }

    private static String first(MultiValueMap<String, String> given, String id) {
        return Optional.ofNullable(given.getFirst(id)).orElse("");
    }

    private static String me() {
        return SignedIn.now().map(SignedIn::name).orElse("");
    }
}

package org.lensward.board.eye;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lensward.board.access.SignedIn;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.Overtaken;
import org.lensward.board.api.Refusal;
import org.lensward.board.api.Seen;
import org.lensward.board.api.SurgeonsDesk;
import org.lensward.board.page.Page;
import org.lensward.lens.LensPolicy;
import org.lensward.plan.Policy;
import org.lensward.quantity.Dioptres;
import org.lensward.record.check.LensChange;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.ui.Model;
import org.springframework.validation.support.BindingAwareModelMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** One eye: its whole plan, and the surgeon's word on it. */
@Page
public final class EyePage {

    private final PlannedEyes eyes;
    private final SurgeonsDesk surgeons;
    private final LensPolicy policy;

    public EyePage(PlannedEyes eyes, Bookings bookings, Policy policy) {
        this.eyes = eyes;
        this.surgeons = new SurgeonsDesk(bookings);
        this.policy = policy.lens();
    }

    @GetMapping("/eye/{booking}")
    String eye(@PathVariable String booking, @RequestParam Optional<String> done, Model model) {
        model.addAttribute("done", done.flatMap(EyePage::said).orElse(""));
        model.addAttribute("typed", Typed.nothing());
        show(eyes.of(Bookings.name(booking)), model);
        return "eye";
    }

    /** Asked by the page itself while the record does not hold the plan it shows. */
    @GetMapping("/eye/{booking}/written")
    ResponseEntity<Void> written(@PathVariable String booking) {
        EyeView now = eyes.of(Bookings.name(booking)).view(policy);
        return now.written() || now.begun()
                ? ResponseEntity.noContent().header("HX-Refresh", "true").build()
                : ResponseEntity.noContent().build();
    }

    @PostMapping("/eye/{booking}/confirm")
    ModelAndView confirm(@PathVariable String booking, @ModelAttribute("typed") Typed typed) {
        return after("confirmed", booking, typed, () -> surgeons.confirm(Bookings.name(booking), seen(typed), me()));
    }

    @PostMapping("/eye/{booking}/refuse")
    ModelAndView refuse(@PathVariable String booking, @ModelAttribute("typed") Typed typed) {
        return after(
                "refused",
                booking,
                typed,
                () -> surgeons.refuse(Bookings.name(booking), seen(typed), typed.decision(me())));
    }

    @PostMapping("/eye/{booking}/choose-again")
    ModelAndView chooseAgain(@PathVariable String booking, @ModelAttribute("typed") Typed typed) {
        return after(
                "chosen-again",
                booking,
                typed,
                () -> surgeons.chooseAgain(Bookings.name(booking), seen(typed), typed.decision(me())));
    }

    @PostMapping("/eye/{booking}/change")
    ModelAndView change(@PathVariable String booking, @ModelAttribute("typed") Typed typed) {
        return after("changed", booking, typed, () -> {
            String name = Bookings.name(booking);
            surgeons.change(name, seen(typed), typed.decision(me()), wanted(name, typed));
        });
    }

    /** A power is wanted by the target that leads to it; the two together would contradict each other. */
    private LensChange wanted(String booking, Typed typed) {
        Optional<Dioptres> target = read(typed.target(), "The target");
        Optional<Dioptres> power = read(typed.power(), "The power");
        if (target.isPresent() && power.isPresent()) {
            throw new NotUnderstood("State a target or a power, not both: the one follows from the other.");
        }
        Optional<Dioptres> aimed = power.isEmpty()
                ? target
                : Optional.of(power.flatMap(each -> eyes.of(booking).targetFor(each, policy.side()))
                        .orElseThrow(() -> new NotUnderstood("That power is not among those shown for this eye.")));
        return new LensChange(aimed, Optional.ofNullable(typed.model()).filter(each -> !each.isBlank()));
    }

    private static Optional<Dioptres> read(@Nullable String text, String what) {
        if (text == null || text.isBlank()) {
            return Optional.empty();
        }
        try {
            String plain = text.replace("D", "")
                    .replace(',', '.')
                    .replace('\u2212', '-')
                    .strip();
            return Optional.of(Dioptres.of(Double.parseDouble(plain)));
        } catch (IllegalArgumentException notANumber) {
            throw new NotUnderstood(what + " is not a number of dioptres, such as -0.50.");
        }
    }

    /** Done, the page is loaded anew; not done, it comes back with all that was typed. */
    private ModelAndView after(String deed, String booking, Typed typed, Runnable act) {
        try {
            act.run();
            return new ModelAndView("redirect:/eye/" + booking + "?done=" + deed);
        } catch (Overtaken overtaken) {
            return again(booking, typed, Said.of(overtaken));
        } catch (Refusal refusal) {
            return again(booking, typed, Said.of(refusal));
        } catch (NotUnderstood fault) {
            return again(booking, typed, new Said(String.valueOf(fault.getMessage()), "Nothing was written."));
        }
    }

    private ModelAndView again(String booking, Typed typed, Said said) {
        ModelAndView answer = new ModelAndView("eye");
        answer.setStatus(HttpStatus.CONFLICT);
        Model model = new BindingAwareModelMap();
        show(eyes.of(Bookings.name(booking)), model);
        answer.addAllObjects(model.asMap());
        answer.addObject("done", "");
        answer.addObject("typed", typed);
        answer.addObject("said", said);
        return answer;
    }

    private void show(PlannedEye eye, Model model) {
        model.addAttribute("view", eye.view(policy));
        model.addAttribute("models", eye.models());
    }

    private static Seen seen(Typed typed) {
        return new Seen(typed.seen() == null ? "" : typed.seen());
    }

    private static String me() {
        return SignedIn.now().map(SignedIn::name).orElse("");
    }

    private static Optional<String> said(String deed) {
        return switch (deed) {
            case "confirmed" -> Optional.of("Confirmed. The lens may be picked.");
            case "refused" -> Optional.of("Not confirmed. No lens may be picked until a surgeon chooses again.");
            case "chosen-again" -> Optional.of("Chosen again: a new lens check is open, and begins at the pick.");
            case "changed" ->
                Optional.of("The booking says so now. The eye is planned again, and the new plan awaits confirmation.");
            default -> Optional.empty();
        };
    }

    /** What a person typed cannot be read. */
    private static final class NotUnderstood extends RuntimeException {

        private static final long serialVersionUID = 1;

        NotUnderstood(String why) {
            super(why);
        }
    }
}

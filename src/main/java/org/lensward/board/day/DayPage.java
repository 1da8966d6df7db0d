package org.lensward.board.day;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import org.lensward.board.page.Page;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The theatre list. The list looks for news every few seconds by asking for itself with the version it shows; the answer is 204 while
 * nothing has changed. Answers are not to be stored anywhere (they name patients), so there is no ETag for a browser to keep; and a proxy
 * that holds back a stream of events does not matter.
 */
@Page
public final class DayPage {

    private final DayView view;
    private final Clock clock;

    public DayPage(DayView view, Clock clock) {
        this.view = view;
        this.clock = clock;
    }

    @ModelAttribute("filter")
    DayFilter filter(
            @RequestParam(defaultValue = "") String theatre,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(defaultValue = "") String surgeon) {
        return new DayFilter(theatre, state, surgeon);
    }

    @GetMapping("/")
    String today(@ModelAttribute("filter") DayFilter filter, Model model) {
        return day(view.now().nearest(LocalDate.now(clock)), filter, model);
    }

    @GetMapping("/day/{day}")
    String day(@PathVariable LocalDate day, @ModelAttribute("filter") DayFilter filter, Model model) {
        model.addAttribute("sheet", new DaySheetShown(day, view.now(), filter, clock.getZone()));
        return "day";
    }

    @GetMapping("/day/{day}/list")
    String list(
            @PathVariable LocalDate day,
            @ModelAttribute("filter") DayFilter filter,
            @RequestHeader(name = "Lensward-News", defaultValue = "") String seen,
            Model model,
            HttpServletResponse response) {
        DaySheetShown sheet = new DaySheetShown(day, view.now(), filter, clock.getZone());
        response.setHeader("HX-Trigger", "{\"as-of\": \"" + sheet.asOf() + "\"}");
        if (seen.equals(sheet.version())) {
            response.setStatus(HttpStatus.NO_CONTENT.value());
        }
        model.addAttribute("sheet", sheet);
        return "day :: list";
    }
}

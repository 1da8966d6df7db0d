package org.lensward.board.day;

import org.lensward.board.page.Page;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The theatre list. */
@Page
public final class DayPage {

    @GetMapping("/")
    String today(Model model) {
        return "day";
    }
}

package org.lensward.board.page;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.lensward.board.access.SignedIn;
import org.springframework.http.HttpStatusCode;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.servlet.ModelAndView;

/**
 * What a person is told when something could not be done: a page of its own, or, where only a part of a page was asked for (htmx), a
 * notice at the head of the page as it stands, with all that was typed.
 *
 * @param title in a few words
 * @param detail what happened, and whether anything was written
 * @param remedy what to do next
 */
public record Notice(String title, String detail, String remedy) {

    /** The notice as the answer to a request. */
    public ModelAndView answer(HttpServletRequest request, HttpServletResponse response, HttpStatusCode status) {
        boolean part = request.getHeader("HX-Request") != null;
        response.setHeader("HX-Retarget", "#notice");
        response.setHeader("HX-Reswap", "innerHTML");
        ModelAndView answer = new ModelAndView(part ? "problem :: notice" : "problem", Map.of("notice", this));
        answer.setStatus(status);
        answer.addObject("signedIn", SignedIn.now());
        Optional.ofNullable(request.getAttribute(CsrfToken.class.getName()))
                .ifPresent(token -> answer.addObject("csrf", token));
        return answer;
    }
}

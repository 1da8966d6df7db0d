package org.lensward.board.page;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lensward.board.access.SignedIn;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** What the layout of every page needs. */
@ControllerAdvice(annotations = Page.class)
final class PageModel {

    @ModelAttribute("signedIn")
    Optional<SignedIn> signedIn() {
        return SignedIn.now();
    }

    @ModelAttribute("csrf")
    @Nullable
    CsrfToken csrf(HttpServletRequest request) {
        return (CsrfToken) request.getAttribute(CsrfToken.class.getName());
    }
}

package org.lensward.board.page;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.lensward.board.access.Doors;
import org.lensward.board.access.SignedIn;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** Signing in, and what is said to whoever may not do what they asked for. */
@Page
public final class SignInPages {

    private final Doors doors;

    SignInPages(Doors doors) {
        this.doors = doors;
    }

    @GetMapping("/sign-in")
    String signIn(Model model) {
        model.addAttribute("doors", doors);
        return "sign-in";
    }

    /** Where one lands who signed in again beside a page whose session had ended. */
    @GetMapping("/signed-in")
    String signedIn() {
        return "signed-in";
    }

    /** The new session's token, for the page that waited; it goes on with what was typed. */
    @GetMapping("/access/token")
    @ResponseBody
    ResponseEntity<Map<String, String>> token(CsrfToken token) {
        Optional<SignedIn> now = SignedIn.now();
        return now.map(each -> ResponseEntity.ok(
                        Map.of("header", token.getHeaderName(), "token", token.getToken(), "name", each.name())))
                .orElseGet(() -> ResponseEntity.status(HttpStatus.UNAUTHORIZED).build());
    }

    @RequestMapping("/refused/role")
    ModelAndView role(HttpServletRequest request, HttpServletResponse response) {
        return new Notice(
                        "Not for your role",
                        "You are signed in, but this is for somebody with another role. Nothing was written.",
                        "Ask a colleague who has the role, or whoever gives out the roles in your hospital.")
                .answer(request, response, HttpStatus.FORBIDDEN);
    }

    @RequestMapping("/refused/origin")
    ModelAndView origin(HttpServletRequest request, HttpServletResponse response) {
        return new Notice(
                        "The page was out of date",
                        "What was sent did not come from a page of this session. Nothing was written.",
                        "Load the page again and repeat what you did.")
                .answer(request, response, HttpStatus.FORBIDDEN);
    }
}

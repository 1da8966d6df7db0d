package org.lensward.board.access;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authentication.InsufficientAuthenticationException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;

/**
 * Tells a person why they are not let in. A page goes to the sign-in and comes back; a part of a page (htmx) stays where it is, with all
 * that was typed, and the event {@code session-ended} asks to sign in beside it.
 */
final class PageRefusals implements AuthenticationEntryPoint, AccessDeniedHandler {

    private static final Logger LOG = LoggerFactory.getLogger(PageRefusals.class);

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException missing)
            throws IOException {
        if (isPart(request)) {
            ended(response);
        } else {
            response.sendRedirect("/sign-in" + ("GET".equals(request.getMethod()) ? "" : "?lost"));
        }
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException refused)
            throws IOException, ServletException {
        if (refused instanceof CsrfException && SignedIn.now().isEmpty()) {
            commence(request, response, new InsufficientAuthenticationException("ended", refused));
            return;
        }
        String what = refused instanceof CsrfException ? "/refused/origin" : "/refused/role";
        LOG.warn("A page refused: {} {}", request.getMethod(), what);
        response.setStatus(HttpStatus.FORBIDDEN.value());
        request.setAttribute(RequestDispatcher.ERROR_STATUS_CODE, HttpStatus.FORBIDDEN.value());
        request.getRequestDispatcher(what).forward(request, response);
    }

    static void ended(HttpServletResponse response) {
        response.setStatus(HttpStatus.UNAUTHORIZED.value());
        response.setHeader("HX-Trigger", "session-ended");
        response.setHeader("HX-Reswap", "none");
    }

    static boolean isPart(HttpServletRequest request) {
        return request.getHeader("HX-Request") != null;
    }
}

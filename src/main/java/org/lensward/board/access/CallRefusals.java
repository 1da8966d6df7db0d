package org.lensward.board.access;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;

/**
 * Tells a program why it is not let in, as problem+json (RFC 9457), a FHIR client as an OperationOutcome, with the challenge of RFC 6750.
 */
final class CallRefusals implements AuthenticationEntryPoint, AccessDeniedHandler {

    private static final Logger LOG = LoggerFactory.getLogger(CallRefusals.class);

    private final ObjectMapper json;

    CallRefusals(ObjectMapper json) {
        this.json = json;
    }

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException missing)
            throws IOException {
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        write(
                request,
                response,
                HttpStatus.UNAUTHORIZED,
                "not-signed-in",
                "Call with a bearer token of the issuer that Lensward is told to trust (lensward.access.machines).");
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException refused)
            throws IOException {
        LOG.warn("A call refused for its roles: {}", request.getMethod());
        write(
                request,
                response,
                HttpStatus.FORBIDDEN,
                "not-your-role",
                "The token's roles do not allow this. Nothing was written.");
    }

    private void write(
            HttpServletRequest request, HttpServletResponse response, HttpStatus status, String type, String detail)
            throws IOException {
        boolean fhir = request.getRequestURI().startsWith("/fhir/");
        response.setStatus(status.value());
        response.setContentType(fhir ? "application/fhir+json" : MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        json.writeValue(response.getOutputStream(), fhir ? outcome(status, detail) : problem(status, type, detail));
    }

    private static ProblemDetail problem(HttpStatus status, String type, String detail) {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(status, detail);
        problem.setType(URI.create("https://lensward.org/problems/" + type));
        problem.setTitle(status == HttpStatus.FORBIDDEN ? "Not allowed" : "Not signed in");
        return problem;
    }

    /** The same as an OperationOutcome, as FHIR R4 has it. */
    private static Map<String, Object> outcome(HttpStatus status, String detail) {
        String code = status == HttpStatus.FORBIDDEN ? "forbidden" : "login";
        return Map.of(
                "resourceType",
                "OperationOutcome",
                "issue",
                List.of(Map.of("severity", "error", "code", code, "diagnostics", detail)));
    }
}

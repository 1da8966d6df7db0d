package org.lensward.board.gate;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;

/** A refusal before anything was read, as problem+json (RFC 9457). */
final class GateRefusal {

    private static final ObjectMapper JSON = new ObjectMapper();

    private GateRefusal() {}

    static void write(HttpServletResponse response, HttpStatus status, String type, String detail) throws IOException {
        Map<String, Object> problem = new LinkedHashMap<>();
        problem.put("type", "https://lensward.org/problems/" + type);
        problem.put("title", status.getReasonPhrase());
        problem.put("status", status.value());
        problem.put("detail", detail);
        response.setStatus(status.value());
        response.setContentType("application/problem+json");
        response.getOutputStream().write(JSON.writeValueAsBytes(problem));
    }
}

package org.lensward.board.gate;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpStatus;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * So many bytes in one request; beyond them 413, whether the length was announced or the bytes come in chunks without end. A form is
 * read by the server itself, within {@code server.tomcat.max-http-form-post-size}.
 */
final class BodyLimit extends OncePerRequestFilter {

    private static final String FORM = "application/x-www-form-urlencoded";

    private final int most;

    BodyLimit(int most) {
        this.most = most;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getContentLengthLong() > most) {
            refuse(response);
            return;
        }
        String type = request.getContentType();
        if (request.getContentLengthLong() == 0 || type != null && type.startsWith(FORM)) {
            chain.doFilter(request, response);
            return;
        }
        byte[] body = request.getInputStream().readNBytes(most + 1);
        if (body.length > most) {
            refuse(response);
            return;
        }
        chain.doFilter(new ReadRequest(request, body), response);
    }

    private void refuse(HttpServletResponse response) throws IOException {
        // What is still on its way is not waited for.
        response.setHeader("Connection", "close");
        GateRefusal.write(
                response,
                HttpStatus.PAYLOAD_TOO_LARGE,
                "too-large",
                "More than " + most + " bytes were sent; nothing was done with them.");
    }
}

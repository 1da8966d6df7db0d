package org.lensward.board;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.Optional;
import org.springframework.util.unit.DataSize;

/**
 * How long the body of a request may be.
 *
 * @param longest in bytes
 */
public record BodyLimit(DataSize longest) {

    /** The body, whole; empty where it is longer, of which no more is read than shows it. */
    public Optional<byte[]> read(HttpServletRequest request) throws IOException {
        if (request.getContentLengthLong() > longest.toBytes()) {
            return Optional.empty();
        }
        byte[] body = request.getInputStream().readNBytes(Math.toIntExact(longest.toBytes()) + 1);
        return body.length > longest.toBytes() ? Optional.empty() : Optional.of(body);
    }
}

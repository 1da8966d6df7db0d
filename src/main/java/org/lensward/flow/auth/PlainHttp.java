package org.lensward.flow.auth;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.net.ssl.SSLContext;

/** Small questions to the authorization server. Follows no redirect, reads no long answer. */
final class PlainHttp {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int LONGEST = 1 << 18;

    private final HttpClient client;
    private final Duration timeout;

    PlainHttp(Duration timeout, Optional<SSLContext> tls) {
        HttpClient.Builder builder = HttpClient.newBuilder()
                .followRedirects(HttpClient.Redirect.NEVER)
                .connectTimeout(timeout);
        tls.ifPresent(builder::sslContext);
        this.client = builder.build();
        this.timeout = timeout;
    }

    /**
     * What was answered.
     *
     * @param status HTTP status
     * @param json the body; missing where it is no JSON
     */
    record Answer(int status, JsonNode json) {}

    Answer get(URI url) throws IOException {
        return send(HttpRequest.newBuilder(url).GET());
    }

    Answer post(URI url, Map<String, String> form) throws IOException {
        String body = form.entrySet().stream()
                .map(each -> each.getKey() + "=" + URLEncoder.encode(each.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(HttpRequest.newBuilder(url)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(body)));
    }

    private Answer send(HttpRequest.Builder request) throws IOException {
        request.header("Accept", "application/json").timeout(timeout);
        try {
            HttpResponse<InputStream> response = client.send(request.build(), BodyHandlers.ofInputStream());
            try (InputStream body = response.body()) {
                return new Answer(response.statusCode(), json(body.readNBytes(LONGEST)));
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("Stopped while asking for a token");
        }
    }

    private static JsonNode json(byte[] body) throws IOException {
        try {
            return JSON.readTree(body);
        } catch (JsonProcessingException notJson) {
            return MissingNode.getInstance();
        }
    }
}

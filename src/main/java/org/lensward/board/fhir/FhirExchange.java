package org.lensward.board.fhir;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.StrictErrorHandler;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.board.BodyLimit;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** FHIR over HTTP as we speak it: R4, JSON, UTF-8 (FHIR R4, RESTful API, content types). */
final class FhirExchange {

    static final MediaType FHIR_JSON = MediaType.parseMediaType("application/fhir+json");

    private static final MediaType FHIR_JSON_UTF8 = new MediaType(FHIR_JSON, StandardCharsets.UTF_8);
    private static final List<MediaType> READ = List.of(FHIR_JSON, MediaType.APPLICATION_JSON);
    private static final Set<String> FORMATS = Set.of("json", "application/json", "application/fhir+json");
    private static final String OUR_VERSION = "4.0";

    private final FhirContext fhir;
    private final BodyLimit limit;

    FhirExchange(FhirContext fhir, BodyLimit limit) {
        this.fhir = fhir;
        this.limit = limit;
    }

    /** The resource that was posted; refused unless it can be read and its answer understood. */
    Resource read(HttpServletRequest request) throws IOException {
        expect(request, "POST");
        if (!isRead(request.getContentType())) {
            throw new FhirRefusal(
                    HttpStatus.UNSUPPORTED_MEDIA_TYPE,
                    IssueType.NOTSUPPORTED,
                    "Only application/fhir+json of FHIR R4 (fhirVersion=4.0) is read.");
        }
        byte[] body = limit.read(request)
                .orElseThrow(() -> new FhirRefusal(
                        HttpStatus.PAYLOAD_TOO_LARGE,
                        IssueType.TOOLONG,
                        "The request is longer than lensward.fhir.body-limit."));
        return parse(new String(body, StandardCharsets.UTF_8));
    }

    /** Refuses any other method, and whoever does not understand the answer. */
    void expect(HttpServletRequest request, String method) {
        if (!request.getMethod().equals(method)) {
            throw new FhirRefusal(
                    HttpStatus.METHOD_NOT_ALLOWED, IssueType.NOTSUPPORTED, "Only " + method + " is answered here.");
        }
        if (!isAnswered(request)) {
            throw new FhirRefusal(
                    HttpStatus.NOT_ACCEPTABLE, IssueType.NOTSUPPORTED, "Answers are application/fhir+json only.");
        }
    }

    /** An answer with a resource. */
    ResponseEntity<byte[]> answer(HttpStatus status, Resource resource) {
        return ResponseEntity.status(status)
                .contentType(FHIR_JSON_UTF8)
                .body(fhir.newJsonParser().encodeResourceToString(resource).getBytes(StandardCharsets.UTF_8));
    }

    private Resource parse(String body) {
        try {
            return (Resource) fhir.newJsonParser()
                    .setParserErrorHandler(new StrictErrorHandler())
                    .parseResource(body);
        } catch (DataFormatException notFhir) {
            throw new FhirRefusal(
                    HttpStatus.BAD_REQUEST, IssueType.STRUCTURE, "Not FHIR R4 JSON: " + notFhir.getMessage());
        }
    }

    private static boolean isRead(String contentType) {
        return types(Optional.ofNullable(contentType).stream().toList()).stream()
                .filter(type -> READ.stream().anyMatch(type::equalsTypeAndSubtype))
                .anyMatch(FhirExchange::isOurVersion);
    }

    private static boolean isAnswered(HttpServletRequest request) {
        String format = request.getParameter("_format");
        if (format != null) {
            // In an address that was not encoded, the plus of fhir+json is a space.
            return FORMATS.contains(format.toLowerCase(Locale.ROOT).replace(' ', '+'));
        }
        List<String> accepted = Collections.list(request.getHeaders(HttpHeaders.ACCEPT));
        return accepted.isEmpty()
                || types(accepted).stream()
                        .filter(type -> type.getQualityValue() > 0)
                        .filter(FhirExchange::isOurVersion)
                        .anyMatch(type -> READ.stream().anyMatch(type::includes));
    }

    private static boolean isOurVersion(MediaType type) {
        return Optional.ofNullable(type.getParameter("fhirVersion"))
                .map(OUR_VERSION::equals)
                .orElse(true);
    }

    private static List<MediaType> types(List<String> headers) {
        try {
            return MediaType.parseMediaTypes(headers);
        } catch (InvalidMediaTypeException unreadable) {
            return List.of();
        }
    }
}

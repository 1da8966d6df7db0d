package org.lensward.record.incoming;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.util.regex.Pattern;

/**
 * Whether JSON is such as biometry is written in, seen before anything is built of it: no deeper than FHIR nests, no number that would
 * fill the memory once it is written out in full.
 */
final class BoundedJson {

    private static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(100)
                    .maxNumberLength(60)
                    .maxStringLength(2_000_000)
                    .build())
            .build();

    /** FHIR R4's decimal has no bound; four digits of exponent are beyond every measure. */
    private static final Pattern HUGE = Pattern.compile(".*[eE][+-]?\\d{4,}");

    private BoundedJson() {}

    /** Whether it is JSON and within bounds. */
    static boolean holds(String text) {
        try (JsonParser parser = JSON.createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token.isNumeric() && HUGE.matcher(parser.getText()).matches()) {
                    return false;
                }
            }
            return true;
        } catch (IOException beyond) {
            return false;
        }
    }
}

package org.lensward.record;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The kinds of warning that {@code fhir-profiles/accepted-warnings.md} numbers, each with its reason. */
public final class AcceptedWarnings {

    private static final String OF_THE_DAY = "## Of the day alone";
    private static final List<String> EXAMPLES = lines(text().substring(0, text().indexOf(OF_THE_DAY)));
    private static final List<String> DAY = lines(text().substring(text().indexOf(OF_THE_DAY)));

    private AcceptedWarnings() {}

    private static String text() {
        return ProfileArtefacts.text("accepted-warnings.md");
    }

    private static List<String> lines(String part) {
        return Pattern.compile("(?m)^\\d+\\. `([^`]+)`: \\S.*$")
                .matcher(part)
                .results()
                .map(line -> line.group(1))
                .toList();
    }

    /** What examples call forth. */
    static List<String> ofExamples() {
        return EXAMPLES;
    }

    /** What only the whole of a theatre day calls forth. */
    public static List<String> ofTheDay() {
        return DAY;
    }

    static boolean accept(String warning) {
        return Stream.concat(EXAMPLES.stream(), DAY.stream()).anyMatch(warning::contains);
    }
}

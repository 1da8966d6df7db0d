package org.lensward.record;

import java.util.List;
import java.util.regex.Pattern;

/** The kinds of warning that {@code fhir-profiles/accepted-warnings.md} numbers, each with its reason. */
final class AcceptedWarnings {

    private static final List<String> ALL = Pattern.compile("(?m)^\\d+\\. `([^`]+)`: \\S.*$")
            .matcher(ProfileArtefacts.text("accepted-warnings.md"))
            .results()
            .map(line -> line.group(1))
            .toList();

    private AcceptedWarnings() {}

    static List<String> all() {
        return ALL;
    }

    static boolean accept(String warning) {
        return ALL.stream().anyMatch(warning::contains);
    }
}

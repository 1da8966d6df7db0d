package org.lensward;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.record.site.CodeSurvey;
import org.lensward.record.site.SurveyLine;

/** A survey of codes as a person reads it: what needs work first. */
final class CodesTable {

    private static final int WIDEST = 100;

    private CodesTable() {}

    static String of(CodeSurvey survey) {
        List<SurveyLine> lines = survey.lines();
        int width = lines.stream()
                .mapToInt(line -> written(line.what()).length())
                .max()
                .orElse(4);
        String format = "%-9s  %-3s  %-14s  %-" + width + "s  %6s  %s";
        Stream<String> table = Stream.concat(
                Stream.of(
                        String.format(Locale.ROOT, format, "state", "eye", "where", "what", "times", "understood as")),
                lines.stream()
                        .map(line -> String.format(
                                Locale.ROOT,
                                format,
                                line.state().toString(),
                                line.onEye() ? "eye" : "",
                                line.where(),
                                written(line.what()),
                                line.times(),
                                line.as())));
        return table.map(String::stripTrailing).collect(Collectors.joining("\n")) + "\n\n" + totals(survey);
    }

    private static String totals(CodeSurvey survey) {
        return Stream.of(SurveyLine.State.values())
                .map(state -> String.format(
                        Locale.ROOT,
                        "%s: %d (%d times)",
                        state,
                        survey.lines().stream()
                                .filter(line -> line.state() == state)
                                .count(),
                        survey.lines().stream()
                                .filter(line -> line.state() == state)
                                .mapToInt(SurveyLine::times)
                                .sum()))
                .collect(Collectors.joining("; "));
    }

    /** What a record sends as a code may be anything at all; a terminal shows one short line of it. */
    private static String written(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= WIDEST ? plain : plain.substring(0, WIDEST - 3) + "...";
    }
}

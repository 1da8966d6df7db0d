package org.lensward.board.api;

import java.util.List;
import java.util.Locale;
import org.lensward.finding.Finding;

/**
 * Something found, as JSON carries it.
 *
 * @param code what was found
 * @param severity how far it reaches
 * @param message with the particulars
 * @param remedy what a person does about it
 * @param evidence resources and elements
 */
public record Found(String code, String severity, String message, String remedy, List<String> evidence) {

    public static Found of(Finding finding) {
        return new Found(
                finding.code().code(),
                finding.severity().name().toLowerCase(Locale.ROOT),
                finding.message(),
                finding.remedy(),
                finding.evidence().stream().map(Object::toString).toList());
    }
}

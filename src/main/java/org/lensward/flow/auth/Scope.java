package org.lensward.flow.auth;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a backend service may do with one type of resource (HL7 SMART App Launch 2.2.0, "Scopes for requesting FHIR resources"). Scopes
 * of version 1 are read as version 2: {@code read} is {@code rs}, {@code write} is {@code cud}, {@code *} is all.
 *
 * @param type resource type, or {@code *} for every one
 * @param rights letters of {@code cruds}, in that order
 * @param narrowed what narrows it, such as {@code ?category=laboratory}; empty for nothing
 */
record Scope(String type, String rights, String narrowed) {

    private static final Pattern SYSTEM =
            Pattern.compile("system/(\\*|[A-Z][A-Za-z]+)\\.(read|write|\\*|c?r?u?d?s?)(\\?.*)?");

    /** Reads a scope of ours; the settings are at fault where it is none. */
    static Scope parse(String text) {
        Matcher scope = SYSTEM.matcher(text);
        if (!scope.matches() || scope.group(2).isEmpty()) {
            throw new IllegalArgumentException("Not a scope of a backend service: " + text);
        }
        return of(scope);
    }

    /** Whether a granted word is a scope of this kind; others, such as {@code openid}, allow nothing in the record. */
    static boolean isOne(String text) {
        return SYSTEM.matcher(text).matches();
    }

    private static Scope of(Matcher scope) {
        String rights =
                switch (scope.group(2)) {
                    case "read" -> "rs";
                    case "write" -> "cud";
                    case "*" -> "cruds";
                    default -> scope.group(2);
                };
        return new Scope(scope.group(1), rights, scope.group(3) == null ? "" : scope.group(3));
    }

    /** Whether this allows one thing that another asks for. A narrowed scope allows only what is narrowed in the same words. */
    boolean allows(Scope wanted, int right) {
        boolean typed = type.equals("*") || type.equals(wanted.type());
        boolean wide = narrowed.isEmpty() || narrowed.equals(wanted.narrowed());
        return typed && wide && rights.indexOf(right) >= 0;
    }

    @Override
    public String toString() {
        return "system/" + type + "." + rights + narrowed;
    }
}

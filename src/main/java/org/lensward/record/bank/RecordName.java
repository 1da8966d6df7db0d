package org.lensward.record.bank;

import java.util.Optional;
import java.util.regex.Pattern;

/** Names of resources as a person or a screen gives them: they become part of a question to the record and must be nothing else. */
public final class RecordName {

    private static final Pattern ID = Pattern.compile("[A-Za-z0-9.-]{1,64}");

    private RecordName() {}

    /** Whether it is the name of a resource of that type, such as {@code Device/unit-1}. */
    static boolean isOf(String type, String name) {
        return name.startsWith(type + "/")
                && ID.matcher(name.substring(type.length() + 1)).matches();
    }

    /** The full name, of an id alone or a full name; nothing where it is neither. */
    public static Optional<String> of(String type, String given) {
        String name = given.startsWith(type + "/") ? given : type + "/" + given;
        return Optional.of(name).filter(each -> isOf(type, each));
    }

    static void require(String type, String name) {
        if (!isOf(type, name)) {
            throw new IllegalArgumentException("Not the name of a " + type);
        }
    }
}

package org.lensward.flow;

import com.fasterxml.jackson.annotation.JsonCreator;

/** A mix-in for types that stand in a file as they print, and are read by their own {@code parse}: "21.30 mm", "system|code". */
interface AsPrinted {

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Object parse(String text) {
        throw new UnsupportedOperationException("A mix-in has no body: " + text);
    }
}

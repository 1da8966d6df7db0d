package org.lensward.board.day;

import org.springframework.web.util.UriComponentsBuilder;

/**
 * Which eyes are wanted. None of it is of a patient, so it may stand in an address; a name is looked for in the page alone.
 *
 * @param theatre only there; empty for everywhere
 * @param state only in that state; empty for all
 * @param surgeon only of that surgeon; empty for all
 */
public record DayFilter(String theatre, String state, String surgeon) {

    boolean wants(EyeLine line) {
        return is(theatre, line.theatre()) && is(state, line.state()) && is(surgeon, line.surgeon());
    }

    private static boolean is(String wanted, String given) {
        return wanted.isEmpty() || wanted.equals(given);
    }

    /** The address of something that is to be filtered so. */
    public String on(String path) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        add(address, "theatre", theatre);
        add(address, "state", state);
        add(address, "surgeon", surgeon);
        return address.encode().build().toUriString();
    }

    private static void add(UriComponentsBuilder address, String name, String value) {
        if (!value.isEmpty()) {
            address.queryParam(name, value);
        }
    }
}

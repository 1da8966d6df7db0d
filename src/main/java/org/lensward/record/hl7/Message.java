package org.lensward.record.hl7;

import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.InstantType;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/**
 * A message as it came: its segments in their order.
 *
 * @param segments the first is MSH
 */
record Message(List<Fields> segments) {

    Fields header() {
        return segments.get(0);
    }

    /** Type and event, such as {@code ORU^R01}. */
    String type() {
        return header().text(9) + "^" + header().text(9, 0, 2);
    }

    String version() {
        return header().text(12);
    }

    /** Who sent it: facility and application, in every lasting id. */
    String sender() {
        return header().text(4) + "|" + header().text(3);
    }

    /** When it was sent, by which late messages are told. */
    InstantType sent(Times times) {
        return times.instant(header(), 7);
    }

    Stream<Fields> all(String name) {
        return segments.stream().filter(each -> each.name().equals(name));
    }

    Fields only(String name) {
        List<Fields> found = all(name).toList();
        if (found.isEmpty()) {
            throw new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, name, name);
        }
        if (found.size() > 1) {
            throw new RefusedInput(FindingCode.MESSAGE_UNREADABLE, name, name, "more than one in one message");
        }
        return found.get(0);
    }
}

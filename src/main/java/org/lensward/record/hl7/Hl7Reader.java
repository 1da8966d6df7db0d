package org.lensward.record.hl7;

import java.nio.charset.Charset;
import java.util.Set;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;

/** Reads one message of biometry or of a booking; says what the record must hold because of it. */
public final class Hl7Reader {

    private static final Set<String> VERSIONS =
            Set.of("2.3", "2.3.1", "2.4", "2.5", "2.5.1", "2.6", "2.7", "2.7.1", "2.8", "2.8.1", "2.8.2");

    private static final Set<String> BOOKINGS = Set.of("SIU^S12", "SIU^S13", "SIU^S14", "SIU^S15");

    private final MessageParser parser;
    private final Site site;
    private final String processing;

    /**
     * A reader for one site.
     *
     * @param site what the site calls things
     * @param usual the character set of messages that name none
     * @param processing the processing id (MSH-11) of the messages that are meant: P in production, T for a trial
     */
    public Hl7Reader(Site site, Charset usual, String processing) {
        this.parser = new MessageParser(usual);
        this.site = site;
        this.processing = processing;
    }

    /** What the message brings; a {@link RefusedInput} where nothing of it may be stored. */
    public Incoming read(byte[] bytes) {
        Message message = parser.parse(bytes);
        Fields header = message.header();
        header.required(10);
        if (!VERSIONS.contains(message.version())) {
            throw notAccepted(header.at(12), "this version");
        }
        if (!processing.equals(header.text(11))) {
            throw notAccepted(header.at(11), "this processing id");
        }
        if (message.type().equals("ORU^R01")) {
            return BiometryMessage.read(message, site);
        }
        if (BOOKINGS.contains(message.type())) {
            return BookingMessage.read(message, site);
        }
        throw notAccepted(header.at(9), "this type of message");
    }

    private static RefusedInput notAccepted(String place, String what) {
        return new RefusedInput(FindingCode.MESSAGE_NOT_ACCEPTED, place, place, what);
    }
}

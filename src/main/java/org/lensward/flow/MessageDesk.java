package org.lensward.flow;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import org.apache.camel.Exchange;
import org.apache.camel.ExchangeProperty;
import org.lensward.record.hl7.Acknowledgement;
import org.lensward.record.hl7.Hl7Reader;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.RefusedInput;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Where HL7 messages arrive and are answered. An answer of AA is given only when everything the message brought is in the record. */
public final class MessageDesk {

    private static final Logger LOG = LoggerFactory.getLogger(MessageDesk.class);

    private final Hl7Reader reader;
    private final IncomingStore store;
    private final Clock clock;

    public MessageDesk(Hl7Reader reader, IncomingStore store, Clock clock) {
        this.reader = reader;
        this.store = store;
        this.clock = clock;
    }

    /** Reads the message and stores what it brings. */
    public void take(@ExchangeProperty("message") byte[] message) {
        Incoming incoming = reader.read(message);
        store.store(incoming);
    }

    /** The answer to a message of which everything is stored. */
    public byte[] accept(@ExchangeProperty("message") byte[] message) {
        return Acknowledgement.accepted().to(message, clock.instant());
    }

    /** The answer to a message of which nothing may be stored. */
    public byte[] refuse(
            @ExchangeProperty("message") byte[] message,
            @ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        if (failure instanceof RefusedInput refusal) {
            LOG.warn(
                    "Message refused at {}: {}", refusal.place(), refusal.code().code());
            return Acknowledgement.refused(refusal).to(message, clock.instant());
        }
        LOG.error("Message set aside after {}", failure.getClass().getSimpleName());
        return Acknowledgement.failed().to(message, clock.instant());
    }

    /** The answer while the record is away: the sender keeps the message. */
    public byte[] later(
            @ExchangeProperty("message") byte[] message,
            @ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        LOG.warn("Message to be sent again after {}", failure.getClass().getSimpleName());
        return Acknowledgement.later().to(message, clock.instant());
    }

    /** Why it is set aside, as people look it up. */
    public static String reason(@ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        return failure instanceof RefusedInput refusal
                ? refusal.place() + " " + refusal.code().code() + ": " + refusal.getMessage() + " "
                        + refusal.code().remedy()
                : failure.getClass().getSimpleName();
    }

    /** One message waits once, however often it is sent. */
    public static String name(@ExchangeProperty("message") byte[] message) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(message));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }
}

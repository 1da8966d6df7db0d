package org.lensward.record.hl7;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/**
 * The answer to one message in original mode (HL7 2.5 section 2.9.2): MSH, MSA, and ERR where something is wrong. It is written from the
 * bytes of the message's first line, for a message that cannot be parsed is answered too. It never repeats what it was sent but the
 * control id.
 *
 * @param code what became of the message
 * @param text words for a person, in MSA-3 and ERR-8
 * @param place the segment and field at fault; empty where none is
 * @param error condition by HL7 table 0357
 */
public record Acknowledgement(Code code, String text, String place, String error) {

    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyyMMddHHmmss'+0000'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** HL7 table 0008. */
    public enum Code {
        /** What it brought is in the record. */
        AA,
        /** Not stored: set aside for a person, or to be sent again. */
        AE,
        /** Not for us, or not to be read. */
        AR
    }

    /** Everything the message brought is in the record. */
    public static Acknowledgement accepted() {
        return new Acknowledgement(Code.AA, "", "", "0");
    }

    /** The record is away or refuses for now: the sender keeps the message and sends it again. */
    public static Acknowledgement later() {
        return new Acknowledgement(Code.AE, "The record cannot take it now: send it again.", "", "207");
    }

    /** The record will not have it; a person must look. */
    public static Acknowledgement failed() {
        return new Acknowledgement(Code.AE, "It could not be stored and is set aside for a person.", "", "207");
    }

    /** Nothing of it may be stored, and why. */
    public static Acknowledgement refused(RefusedInput refusal) {
        boolean unread =
                refusal.code() == FindingCode.MESSAGE_NOT_ACCEPTED || refusal.code() == FindingCode.MESSAGE_UNREADABLE;
        String error =
                switch (refusal.code()) {
                    case MESSAGE_NOT_ACCEPTED -> byPlace(refusal.place());
                    case MESSAGE_FIELD_MISSING, MESSAGE_WITHOUT_EYE -> "101";
                    case MESSAGE_UNREADABLE -> "102";
                    case MESSAGE_EYE_UNREADABLE -> "103";
                    case PATIENT_NOT_IN_RECORD, PATIENT_SYSTEM_UNKNOWN -> "204";
                    default -> "207";
                };
        return new Acknowledgement(
                unread ? Code.AR : Code.AE,
                refusal.getMessage() + " " + refusal.code().remedy(),
                refusal.place(),
                error);
    }

    private static String byPlace(String place) {
        return switch (place) {
            case "MSH(1)-12" -> "203";
            case "MSH(1)-11" -> "202";
            default -> "200";
        };
    }

    /**
     * The answer as it is sent.
     *
     * @param message what is answered
     * @param now when
     */
    public byte[] to(byte[] message, Instant now) {
        String line = new String(message, StandardCharsets.ISO_8859_1).split("[\r\n]", 2)[0];
        boolean readable = line.matches("MSH[^A-Za-z0-9\\s]{5}.*");
        String delimiters = readable ? line.substring(3, 8) : "|^~\\&";
        String field = delimiters.substring(0, 1);
        List<String> asked = readable ? List.of(line.split(Pattern.quote(field), -1)) : List.of();
        String controlId = part(asked, 9);
        String event = part(asked, 8).replaceFirst("^[^" + Pattern.quote(delimiters) + "]*", "");
        List<String> header = new ArrayList<>(List.of("MSH", delimiters.substring(1)));
        List.of(4, 5, 2, 3).forEach(each -> header.add(part(asked, each)));
        header.addAll(List.of(TIME.format(now), "", "ACK" + event(event, delimiters.charAt(1)), controlId + "A"));
        header.addAll(List.of(orElse(part(asked, 10), "P"), orElse(part(asked, 11), "2.5")));
        StringBuilder answer = new StringBuilder(String.join(field, header)).append('\r');
        answer.append(String.join(field, "MSA", code.name(), controlId, escaped(text, delimiters)))
                .append('\r');
        if (code != Code.AA) {
            String location = location(delimiters.charAt(1));
            answer.append(String.join(field, "ERR", "", location, error, "E", "", "", "", escaped(text, delimiters)))
                    .append('\r');
        }
        return answer.toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    /** MSH-9 of an answer: the event of what is answered, and the structure. */
    private static String event(String rest, char component) {
        String[] parts = rest.split(Pattern.quote(String.valueOf(component)), -1);
        return parts.length > 1 ? component + parts[1] + component + "ACK" : "";
    }

    /** ERR-2: segment, its number, field. */
    private String location(char component) {
        var parts = Pattern.compile("([A-Z0-9]{3})(?:\\((\\d+)\\))?-(\\d+)").matcher(place);
        return parts.matches()
                ? parts.group(1) + component + orElse(parts.group(2), "1") + component + parts.group(3)
                : "";
    }

    private static String part(List<String> fields, int index) {
        return fields.size() > index ? fields.get(index) : "";
    }

    private static String orElse(@Nullable String text, String otherwise) {
        return text == null || text.isEmpty() ? otherwise : text;
    }

    private static String escaped(String text, String delimiters) {
        char escape = delimiters.charAt(3);
        StringBuilder escaped = new StringBuilder();
        for (char each : text.toCharArray()) {
            int index = delimiters.indexOf(each);
            escaped.append(index < 0 ? String.valueOf(each) : escape + String.valueOf("FSRET".charAt(index)) + escape);
        }
        return escaped.toString();
    }
}

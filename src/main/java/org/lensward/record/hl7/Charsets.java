package org.lensward.record.hl7;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Pattern;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/** The character sets of MSH-18 (HL7 table 0211, those that contain ASCII). A byte that does not belong is refused, not replaced. */
final class Charsets {

    private static final Map<String, String> TABLE_0211 = Map.ofEntries(
            Map.entry("ASCII", "US-ASCII"),
            Map.entry("8859/1", "ISO-8859-1"),
            Map.entry("8859/2", "ISO-8859-2"),
            Map.entry("8859/3", "ISO-8859-3"),
            Map.entry("8859/4", "ISO-8859-4"),
            Map.entry("8859/5", "ISO-8859-5"),
            Map.entry("8859/6", "ISO-8859-6"),
            Map.entry("8859/7", "ISO-8859-7"),
            Map.entry("8859/8", "ISO-8859-8"),
            Map.entry("8859/9", "ISO-8859-9"),
            Map.entry("8859/15", "ISO-8859-15"),
            Map.entry("UNICODE UTF-8", "UTF-8"),
            Map.entry("UTF-8", "UTF-8"));

    private static final int MSH_18 = 17;

    private Charsets() {}

    /** The text of the message. */
    static String decode(byte[] message, Charset usual) {
        Charset charset = named(message, usual);
        try {
            return charset.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(message))
                    .toString();
        } catch (CharacterCodingException wrong) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE, "MSH-18", "MSH-18", "the text is not in " + charset.name());
        }
    }

    /** What MSH-18 names first; the site's usual one where it is empty. */
    static Charset named(byte[] message, Charset usual) {
        String line = new String(message, StandardCharsets.ISO_8859_1).split("[\r\n]", 2)[0];
        if (line.length() < 4) {
            return usual;
        }
        String[] fields = line.split(Pattern.quote(line.substring(3, 4)), -1);
        String name = fields.length > MSH_18 ? fields[MSH_18].split("[~]", 2)[0].trim() : "";
        if (name.isEmpty()) {
            return usual;
        }
        String java = TABLE_0211.get(name);
        if (java == null) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE, "MSH-18", "MSH-18", "this character set is not read here");
        }
        return Charset.forName(java);
    }
}

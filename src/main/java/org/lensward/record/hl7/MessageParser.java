package org.lensward.record.hl7;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.GenericMessage;
import ca.uhn.hl7v2.model.GenericSegment;
import ca.uhn.hl7v2.parser.EncodingCharacters;
import ca.uhn.hl7v2.parser.GenericModelClassFactory;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.util.idgenerator.InMemoryIDGenerator;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/**
 * Reads segments one by one, without a model of any version: where a sender puts a segment, or a field its version does not have, is
 * no reason to overlook it.
 */
final class MessageParser {

    private static final Pattern SEGMENT = Pattern.compile("[A-Z][A-Z0-9]{2}");
    private static final Pattern START = Pattern.compile("MSH[^A-Za-z0-9\\s]{5}.*", Pattern.DOTALL);

    private final GenericModelClassFactory models = new GenericModelClassFactory();
    private final PipeParser parser;
    private final Charset usual;

    MessageParser(Charset usual) {
        DefaultHapiContext context = new DefaultHapiContext(models);
        // The library would keep a counter in a file of the working directory.
        context.getParserConfiguration().setIdGenerator(new InMemoryIDGenerator());
        context.setValidationContext(ValidationContextFactory.noValidation());
        this.parser = context.getPipeParser();
        this.usual = usual;
    }

    Message parse(byte[] bytes) {
        String text = Charsets.decode(bytes, usual);
        if (!START.matcher(text).matches()) {
            throw unreadable("MSH", "the message does not begin with MSH and its encoding characters");
        }
        List<Fields> segments = new ArrayList<>();
        Map<String, Integer> counts = new HashMap<>();
        try {
            EncodingCharacters encoding = new EncodingCharacters(text.charAt(3), text.substring(4, 8));
            GenericMessage parent = new GenericMessage.V25(models);
            for (String line : text.split("[\r\n]+")) {
                String name = line.length() < 3 ? line : line.substring(0, 3);
                if (!SEGMENT.matcher(name).matches() || line.length() > 3 && line.charAt(3) != text.charAt(3)) {
                    throw unreadable("segment " + (segments.size() + 1), "it is no segment");
                }
                GenericSegment segment = new GenericSegment(parent, name);
                parser.parse(segment, line, encoding);
                segments.add(new Fields(name + "(" + counts.merge(name, 1, Integer::sum) + ")", segment));
            }
        } catch (HL7Exception wrong) {
            throw unreadable("segment " + (segments.size() + 1), "it cannot be parsed");
        }
        return new Message(segments);
    }

    private static RefusedInput unreadable(String place, String why) {
        return new RefusedInput(FindingCode.MESSAGE_UNREADABLE, place, place, why);
    }
}

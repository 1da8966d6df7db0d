package org.lensward;

import ca.uhn.fhir.parser.IParser;
import java.io.PrintStream;
import org.lensward.record.UnreadableRecord;

/** What a command says of input it cannot read: the place and the reason to a person, an exit code to a script. */
final class UnreadableInput {

    static final int EXIT = 2;

    private UnreadableInput() {}

    static int tell(UnreadableRecord refused) {
        System.err.println(refused.element() + ": " + refused.getMessage());
        return EXIT;
    }

    /** The same, with the OperationOutcome where a program reads the answer. */
    static int tell(UnreadableRecord refused, IParser json, PrintStream out) {
        out.println(json.encodeResourceToString(refused.outcome()));
        return tell(refused);
    }
}

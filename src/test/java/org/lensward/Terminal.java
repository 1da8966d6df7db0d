package org.lensward;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * One command as a person at a terminal sees it.
 *
 * @param exit exit code
 * @param out standard output
 * @param err standard error
 */
record Terminal(int exit, String out, String err) {

    static Terminal run(String... arguments) {
        return runWith("", arguments);
    }

    static Terminal runWith(String input, String... arguments) {
        PrintStream out = System.out;
        PrintStream err = System.err;
        InputStream in = System.in;
        ByteArrayOutputStream caughtOut = new ByteArrayOutputStream();
        ByteArrayOutputStream caughtErr = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(caughtOut, true, StandardCharsets.UTF_8));
            System.setErr(new PrintStream(caughtErr, true, StandardCharsets.UTF_8));
            System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
            int exit = Lensward.execute(arguments);
            return new Terminal(
                    exit, caughtOut.toString(StandardCharsets.UTF_8), caughtErr.toString(StandardCharsets.UTF_8));
        } finally {
            System.setOut(out);
            System.setErr(err);
            System.setIn(in);
        }
    }
}

package org.lensward.demo;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A record in a process of its own, to be killed. Arguments: database file, file to write the address to. */
final class RecordProcess {

    private RecordProcess() {}

    public static void main(String[] arguments) throws Exception {
        EmbeddedRecord record = EmbeddedRecord.start(EmbeddedRecordSettings.inFile(0, Path.of(arguments[0])));
        Path draft = Path.of(arguments[1] + ".draft");
        Files.writeString(draft, record.baseUrl());
        Files.move(draft, Path.of(arguments[1]), StandardCopyOption.ATOMIC_MOVE);
    }
}

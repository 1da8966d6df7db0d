package org.lensward.demo;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where the embedded record listens and keeps its data.
 *
 * @param port TCP port; 0 for any free one
 * @param jdbcUrl an H2 database, in memory or in a file
 * @param fresh whether the database is new, so that its tables must be made
 */
public record RecordSettings(int port, String jdbcUrl, boolean fresh) {

    /** A record that is gone when it is closed. */
    public static RecordSettings inMemory(int port, String name) {
        return new RecordSettings(port, "jdbc:h2:mem:" + name + ";DB_CLOSE_DELAY=-1", true);
    }

    /** A record that survives a restart, a killed one too. */
    public static RecordSettings inFile(int port, Path file) {
        boolean fresh = !Files.exists(file.resolveSibling(file.getFileName() + ".mv.db"));
        return new RecordSettings(port, "jdbc:h2:file:" + file.toAbsolutePath() + ";DB_CLOSE_ON_EXIT=FALSE", fresh);
    }
}

package org.lensward.demo;

import java.nio.file.Path;
import java.util.UUID;

/**
 * How the embedded record listens and where it keeps its data.
 *
 * @param port TCP port, 0 for any free one
 * @param jdbcUrl address of the database, H2 or PostgreSQL; PostgreSQL's names its user, and the password comes from
 *     PostgreSQL's own password file
 * @param connections most database connections open at once, at least 2
 */
public record EmbeddedRecordSettings(int port, String jdbcUrl, int connections) {

    private static final String POSTGRES = "jdbc:postgresql:";
    private static final int DEFAULT_CONNECTIONS = 16;
    private static final int HIGHEST_PORT = 65_535;

    public EmbeddedRecordSettings {
        if (port < 0 || port > HIGHEST_PORT) {
            throw new IllegalArgumentException("port out of range: " + port);
        }
        if (!jdbcUrl.startsWith("jdbc:h2:") && !jdbcUrl.startsWith(POSTGRES)) {
            throw new IllegalArgumentException("the embedded record keeps its data in H2 or PostgreSQL");
        }
        if (connections < 2) {
            throw new IllegalArgumentException("at least 2 connections are needed, got " + connections);
        }
    }

    /** A record that is forgotten when it is closed. Each call names a database of its own. */
    public static EmbeddedRecordSettings inMemory(int port) {
        String url = "jdbc:h2:mem:record-" + UUID.randomUUID() + ";DB_CLOSE_ON_EXIT=FALSE";
        return new EmbeddedRecordSettings(port, url, DEFAULT_CONNECTIONS);
    }

    /**
     * A record kept in one file. {@code WRITE_DELAY=0} writes every commit at once: H2's default of half a second would
     * lose acknowledged transactions when the process is killed.
     *
     * @param file the database without H2's {@code .mv.db} ending; its folder is created when missing
     */
    public static EmbeddedRecordSettings inFile(int port, Path file) {
        String url = "jdbc:h2:file:" + file.toAbsolutePath() + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE";
        return new EmbeddedRecordSettings(port, url, DEFAULT_CONNECTIONS);
    }

    /** A record kept in a PostgreSQL database of its own, which may be empty. */
    public static EmbeddedRecordSettings inPostgres(int port, String jdbcUrl) {
        return new EmbeddedRecordSettings(port, jdbcUrl, DEFAULT_CONNECTIONS);
    }

    boolean isPostgres() {
        return jdbcUrl.startsWith(POSTGRES);
    }
}

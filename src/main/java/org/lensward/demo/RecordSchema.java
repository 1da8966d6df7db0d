package org.lensward.demo;

import ca.uhn.fhir.util.VersionUtil;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/**
 * Decides what Hibernate must do to the tables. The version of HAPI that completed them is kept in a table of its own,
 * written last, so that a schema cut half-way or made by another version is brought up to date and a complete one is
 * left alone.
 */
final class RecordSchema {

    private static final String MARK = "EMBEDDED_RECORD_SCHEMA";
    private static final String VERSION_MARKED = "select 1 from " + MARK + " where hapi_version = ?";

    private final DataSource database;

    RecordSchema(DataSource database) {
        this.database = database;
    }

    DataSource database() {
        return database;
    }

    /** Value for {@code hibernate.hbm2ddl.auto}: {@code create-only}, {@code update} or {@code none}. */
    String action() {
        try (Connection connection = database.getConnection()) {
            if (hasRow(connection, "select 1 from information_schema.tables where upper(table_name) = ?", MARK)
                    && hasRow(connection, VERSION_MARKED, VersionUtil.getVersion())) {
                return "none";
            }
            boolean started = hasRow(
                    connection, "select 1 from information_schema.tables where upper(table_schema) = ?", "PUBLIC");
            return started ? "update" : "create-only";
        } catch (SQLException failure) {
            throw new IllegalStateException("the embedded record's database cannot be read", failure);
        }
    }

    /** Notes that the tables are complete for this version of HAPI. */
    void markComplete() {
        try (Connection connection = database.getConnection();
                Statement create = connection.createStatement()) {
            create.execute("create table if not exists " + MARK + " (hapi_version varchar(40) primary key)");
            String version = VersionUtil.getVersion();
            if (!hasRow(connection, VERSION_MARKED, version)) {
                try (PreparedStatement insert =
                        connection.prepareStatement("insert into " + MARK + " (hapi_version) values (?)")) {
                    insert.setString(1, version);
                    insert.executeUpdate();
                }
            }
        } catch (SQLException failure) {
            throw new IllegalStateException("the embedded record's schema cannot be marked complete", failure);
        }
    }

    private static boolean hasRow(Connection connection, String query, String parameter) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(query)) {
            select.setString(1, parameter);
            try (ResultSet rows = select.executeQuery()) {
                return rows.next();
            }
        }
    }
}

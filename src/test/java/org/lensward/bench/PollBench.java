package org.lensward.bench;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.net.URI;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import javax.sql.DataSource;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.RecordClient;
import org.lensward.flow.Watcher;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteSearch;

/**
 * What a look for changes costs while the record grows: a thousand stored Observations, then a million, on PostgreSQL. The growth is rows
 * copied in the database, all a search by time touches; loading a million by HTTP would take hours. Arguments: the numbers.
 */
public final class PollBench {

    private static final int WARM = 200;
    private static final int LOOKS = 101;

    private PollBench() {}

    public static void main(String[] arguments) throws Exception {
        int[] sizes = arguments.length == 0
                ? new int[] {1_000, 1_000_000}
                : Arrays.stream(arguments).mapToInt(Integer::parseInt).toArray();
        try (EmbeddedPostgres postgres = EmbeddedPostgres.start();
                EmbeddedRecord record = EmbeddedRecord.start(
                        EmbeddedRecordSettings.inPostgres(0, postgres.getJdbcUrl("postgres", "postgres")))) {
            new TheatreDay(RecordApart.FHIR).load(record.baseUrl());
            age(postgres.getPostgresDatabase());
            double first = 0;
            for (int size : sizes) {
                long stored = grow(postgres.getPostgresDatabase(), size);
                double cost = look(record);
                first = first == 0 ? cost : first;
                System.out.printf("%,9d Observations: a look takes %.1f ms, ratio %.2f%n", stored, cost, cost / first);
            }
        }
        System.exit(0);
    }

    private static double look(EmbeddedRecord record) {
        Watcher watcher = new Watcher(
                RecordClient.at(URI.create(record.baseUrl()), RecordApart.FHIR),
                new AdapterSettings.Watch(Duration.ofSeconds(5), Duration.ofSeconds(150), 500),
                new SiteSearch(SiteCodes.none()),
                Clock.systemUTC());
        double[] took = new double[LOOKS];
        for (int each = -WARM; each < LOOKS; each++) {
            long start = System.nanoTime();
            watcher.look();
            watcher.queued();
            took[Math.max(each, 0)] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(took);
        return took[LOOKS / 2];
    }

    /** What is stored was stored long ago. */
    private static void age(DataSource database) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("update hfj_resource set res_updated = now() - interval '3 days'");
        }
    }

    private static long grow(DataSource database, int size) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            long have = number(statement, "select count(*) from hfj_resource where res_type = 'Observation'");
            long last = number(statement, "select max(res_id) from hfj_resource");
            copy(connection, "hfj_resource", last, size - have);
            copy(connection, "hfj_res_ver", last, size - have);
            statement.execute("analyze");
            return number(statement, "select count(*) from hfj_resource where res_type = 'Observation'");
        }
    }

    /** One Observation's row, over and over, under ids of its own and spread over three years. */
    private static void copy(Connection connection, String table, long last, long times) throws SQLException {
        try (ResultSet columns = connection.getMetaData().getColumns(null, "public", table, null);
                Statement statement = connection.createStatement()) {
            StringBuilder into = new StringBuilder();
            StringBuilder from = new StringBuilder();
            while (columns.next()) {
                String name = columns.getString("COLUMN_NAME");
                into.append(into.isEmpty() ? "" : ",").append(name);
                from.append(from.isEmpty() ? "" : ",")
                        .append(
                                switch (name) {
                                    case "res_id" -> last + " + n";
                                    case "pid" -> "(select max(pid) from hfj_res_ver) + n";
                                    case "fhir_id" -> "'copy-' || (" + last + " + n)";
                                    case "res_updated" -> "now() - interval '4 days' - n * interval '90 seconds'";
                                    default -> name;
                                });
            }
            statement.execute("insert into " + table + "(" + into + ") select " + from + " from " + table
                    + ", generate_series(1, " + times + ") n where res_id = (select min(res_id) from hfj_resource"
                    + " where res_type = 'Observation')");
        }
    }

    private static long number(Statement statement, String query) throws SQLException {
        try (ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getLong(1);
        }
    }
}

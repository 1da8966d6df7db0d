package org.lensward;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.lensward.board.BoardConfiguration;
import org.lensward.board.DaySheets;
import org.lensward.board.DayTable;
import org.lensward.board.DemoTime;
import org.lensward.board.TheatreLine;
import org.lensward.board.TheatreList;
import org.lensward.board.TheatreTable;
import org.lensward.board.access.DemoAccess;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.Adapter;
import org.lensward.flow.PolicyFile;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Starts a record of its own with a theatre day in it and the adapter beside it, and shows the plans. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description =
                "Starts an embedded record with the demo's theatre day and the adapter; prints the theatre list; stays up.")
final class DemoCommand implements Callable<Integer> {

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "port of the embedded record (default: ${DEFAULT-VALUE})")
    private int port = 8095;

    @Option(
            names = "--data",
            paramLabel = "DIR",
            description = "where record and queue keep their data (default: ${DEFAULT-VALUE})")
    private Path data = Path.of("data");

    @Option(
            names = "--database",
            paramLabel = "URL",
            description = "keep the record in this PostgreSQL database instead, such as"
                    + " jdbc:postgresql://host/record?user=record; its password comes from the file PGPASSFILE names")
    private String database = "";

    @Option(names = "--once", description = "stop when the list is printed")
    private boolean once;

    private final String password = Long.toString(new SecureRandom().nextLong(36L * 36 * 36 * 36 * 36 * 36 * 36), 36);

    private final Progress progress = new Progress();

    @Override
    public Integer call() throws Exception {
        // Logging is set up once, here, before two threads ask for it together.
        LoggerFactory.getLogger(DemoCommand.class).debug("demo");
        progress.say("starting an embedded FHIR record and, beside it, the adapter");
        CompletableFuture<EmbeddedRecord> starting = CompletableFuture.supplyAsync(this::record);
        try (Adapter adapter = Adapter.serve(settings(), BoardConfiguration.class, DemoAccess.class, DemoTime.class);
                EmbeddedRecord record = starting.join()) {
            progress.say("record at " + record.baseUrl());
            new TheatreDay(Fhir.r4()).load(record.baseUrl());
            progress.say("theatre day loaded");
            adapter.work();
            List<TheatreLine> list = planned(adapter);
            System.out.println();
            System.out.println(TheatreTable.of(list));
            System.out.println(DayTable.of(DaySheets.of(
                    new Shelf(adapter.record().gather(TheatreList.QUESTIONS)),
                    PolicyFile.shipped().preparation())));
            System.out.println("Decision support: every plan awaits a surgeon's confirmation.");
            if (!once) {
                System.out.println("The record answers at " + record.baseUrl()
                        + "; the adapter watches it. Pages: http://localhost:" + adapter.port()
                        + "/, password " + password + " for each of the demo's people. Ctrl-C stops both.");
                new CountDownLatch(1).await();
            }
        }
        return 0;
    }

    private EmbeddedRecord record() {
        return EmbeddedRecord.start(
                database.isEmpty()
                        ? EmbeddedRecordSettings.inFile(port, data.resolve("record"))
                        : EmbeddedRecordSettings.inPostgres(port, database));
    }

    private Map<String, Object> settings() {
        return Map.of(
                "lensward.record.url",
                "http://localhost:" + port + "/fhir",
                "spring.artemis.embedded.data-directory",
                data.resolve("queue").toString(),
                "camel.main.auto-startup",
                "false",
                DemoAccess.PASSWORD,
                password,
                DemoTime.DAY,
                TheatreDay.DAY);
    }

    private List<TheatreLine> planned(Adapter adapter) throws InterruptedException {
        long before = -1;
        while (true) {
            List<TheatreLine> list = TheatreList.of(adapter.record().gather(TheatreList.QUESTIONS));
            long planned = list.stream().filter(TheatreLine::planned).count();
            if (planned != before) {
                progress.say("planned " + planned + " of " + list.size());
            }
            if (planned == list.size()) {
                return list;
            }
            before = planned;
            Thread.sleep(Duration.ofMillis(500).toMillis());
        }
    }
}

package org.lensward.board.browser;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import com.nimbusds.jose.JOSEException;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ExtensionContext.Store.CloseableResource;
import org.lensward.board.BoardConfiguration;
import org.lensward.board.DemoTime;
import org.lensward.board.TheatreLine;
import org.lensward.board.TheatreList;
import org.lensward.board.access.DemoAccess;
import org.lensward.board.access.TestKey;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.Adapter;
import org.lensward.record.Fhir;

/** The demo as people see it: a real record with the theatre day, the adapter, its pages, every eye planned. One for all page tests. */
public final class DemoServer implements CloseableResource {

    static final String PASSWORD = "only-of-this-test";

    private final TestKey issuer;
    private final EmbeddedRecord record;
    private final Adapter adapter;

    DemoServer() throws IOException, InterruptedException, JOSEException {
        issuer = new TestKey();
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        new TheatreDay(Fhir.r4()).load(record.baseUrl());
        Map<String, Object> settings = new HashMap<>(issuer.settings());
        settings.put("lensward.record.url", record.baseUrl());
        settings.put("lensward.watch.interval", "500ms");
        settings.put("lensward.day.every", "1s");
        settings.put("server.port", "0");
        settings.put(DemoAccess.PASSWORD, PASSWORD);
        settings.put(DemoTime.DAY, TheatreDay.DAY);
        settings.put(
                "spring.artemis.embedded.data-directory",
                Files.createTempDirectory("queue").toString());
        adapter = Adapter.serve(settings, BoardConfiguration.class, DemoAccess.class, DemoTime.class);
        Instant end = Instant.now().plus(Duration.ofSeconds(90));
        while (!TheatreList.of(adapter.record().gather(TheatreList.QUESTIONS)).stream()
                .allMatch(TheatreLine::planned)) {
            if (Instant.now().isAfter(end)) {
                throw new AssertionError("The theatre day was not planned in time");
            }
            Thread.sleep(300);
        }
    }

    /** The one for this whole run of tests, started by whoever asks first. */
    public static DemoServer shared(ExtensionContext context) {
        return context.getRoot()
                .getStore(Namespace.GLOBAL)
                .getOrComputeIfAbsent(DemoServer.class, type -> started(), DemoServer.class);
    }

    private static DemoServer started() {
        try {
            return new DemoServer();
        } catch (IOException | JOSEException failed) {
            throw new IllegalStateException(failed);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    /** Address of the pages. */
    public String url() {
        return "http://localhost:" + adapter.port();
    }

    /** The issuer whose tokens programs call with. */
    public TestKey issuer() {
        return issuer;
    }

    /** The tests' own way to the record. */
    public IGenericClient record() {
        var fhir = Fhir.r4();
        fhir.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        return fhir.newRestfulGenericClient(record.baseUrl());
    }

    @Override
    public void close() {
        adapter.close();
        record.close();
    }
}

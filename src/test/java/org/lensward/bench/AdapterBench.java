package org.lensward.bench;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.client.WireMock;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.flow.Adapter;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.record.Publication;
import org.lensward.record.Systems;

/**
 * The adapter at work against a record in a process of its own: plans per second beside the same record's ceiling for the same transactions
 * posted by a bare client, both in this run and by as many threads; requests per plan; the time from a measurement to its plan.
 * Arguments: copies of the theatre day (20).
 */
public final class AdapterBench {

    private static final int THREADS = 2;
    private static final int WARM = 2;
    private static final int MEASUREMENTS = 60;

    private final ManyBookings bookings = new ManyBookings();
    private final int copies;

    private AdapterBench(int copies) {
        this.copies = copies;
    }

    public static void main(String[] arguments) throws Exception {
        AdapterBench bench = new AdapterBench(arguments.length == 0 ? 20 : Integer.parseInt(arguments[0]));
        double bare = bench.bareClient();
        double adapter = bench.adapter();
        System.out.printf(
                "plans per second: adapter %.1f, bare client %.1f, ratio %.2f%n", adapter, bare, adapter / bare);
        bench.requests();
        bench.latency();
        System.exit(0);
    }

    private int warm() {
        return WARM * bookings.inOneCopy();
    }

    private int timed() {
        return copies * bookings.inOneCopy();
    }

    /** The transactions the adapter would post, made beforehand. */
    private double bareClient() throws Exception {
        try (RecordApart record = new RecordApart()) {
            bookings.load(record.client(), 0, WARM + copies);
            List<Bundle> transactions = transactions(record);
            post(record, transactions.subList(0, warm()));
            long start = System.nanoTime();
            post(record, transactions.subList(warm(), transactions.size()));
            return timed() / seconds(start);
        }
    }

    private static List<Bundle> transactions(RecordApart record) {
        RecordClient client = RecordClient.at(record.url(), RecordApart.FHIR);
        BundlePlanning planning = new BundlePlanning(RecordApart.FHIR, PolicyFile.shipped(), Clock.systemUTC());
        List<Bundle> all = new ArrayList<>();
        client.gather(List.of("ServiceRequest?status=active&_count=500"))
                .getEntry()
                .forEach(entry -> {
                    ServiceRequest booking = (ServiceRequest) entry.getResource();
                    String name = "ServiceRequest/" + booking.getIdElement().getIdPart() + " "
                            + booking.getSubject().getReference();
                    planning.plan(new Gatherer(client).gather(name)).forEach(each -> {
                        if (each.publication() instanceof Publication.Write write) {
                            all.add(write.bundle());
                        }
                    });
                });
        return all;
    }

    private static void post(RecordApart record, List<Bundle> transactions) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        List<Future<?>> posts = new ArrayList<>();
        RecordClient client = RecordClient.at(record.url(), RecordApart.FHIR);
        transactions.forEach(each -> posts.add(threads.submit(() -> client.post(each))));
        for (Future<?> each : posts) {
            each.get();
        }
        threads.shutdown();
    }

    private double adapter() throws Exception {
        try (RecordApart record = new RecordApart()) {
            IGenericClient client = record.client();
            bookings.load(client, 0, WARM);
            try (Adapter adapter = start(record.url().toString(), "300ms")) {
                adapter.work();
                record.awaitPlans(warm());
            }
            bookings.load(client, WARM, WARM + copies);
            try (Adapter adapter = start(record.url().toString(), "5s")) {
                long start = System.nanoTime();
                adapter.work();
                record.awaitPlans(warm() + timed());
                return timed() / seconds(start);
            }
        }
    }

    private void requests() throws Exception {
        WireMockServer between =
                new WireMockServer(WireMockConfiguration.options().dynamicPort());
        between.start();
        try (RecordApart record = new RecordApart()) {
            bookings.load(record.client(), 0, WARM);
            String host = "http://localhost:" + record.url().getPort();
            between.stubFor(WireMock.any(WireMock.anyUrl())
                    .willReturn(WireMock.aResponse().proxiedFrom(host)));
            try (Adapter adapter = start(between.baseUrl() + "/fhir", "1h")) {
                adapter.work();
                record.awaitPlans(warm());
            }
            int asked = between.countRequestsMatching(
                            WireMock.anyRequestedFor(WireMock.anyUrl()).build())
                    .getCount();
            System.out.printf(
                    "requests: %d for %d plans and one look, %.2f for each plan%n",
                    asked, warm(), (asked - 1) / (double) warm());
        } finally {
            between.stop();
        }
    }

    private void latency() throws Exception {
        try (RecordApart record = new RecordApart()) {
            IGenericClient client = record.client();
            bookings.load(client, 0, 1);
            try (Adapter adapter = start(record.url().toString(), "1s")) {
                adapter.work();
                record.awaitPlans(bookings.inOneCopy());
                double[] took = new double[MEASUREMENTS];
                for (int each = 0; each < MEASUREMENTS; each++) {
                    took[each] = measure(client);
                }
                Arrays.sort(took);
                System.out.printf(
                        "measurement to plan, looking every second: p50 %.2f s, p99 %.2f s of %d%n",
                        took[MEASUREMENTS / 2], took[(int) (MEASUREMENTS * 0.99)], MEASUREMENTS);
            }
        }
    }

    private static double measure(IGenericClient client) throws InterruptedException {
        Observation length = client.read()
                .resource(Observation.class)
                .withId("axial-length-right-01-0")
                .execute();
        length.getNote().clear();
        length.addNote().setText("again at " + System.nanoTime());
        String before = fingerprint(client);
        long start = System.nanoTime();
        client.update().resource(length).execute();
        while (fingerprint(client).equals(before)) {
            Thread.sleep(20);
        }
        return seconds(start);
    }

    private static String fingerprint(IGenericClient client) {
        return client.read()
                .resource(Procedure.class)
                .withId("plan-booking-01-0")
                .execute()
                .getExtensionString(Systems.extension("plan-fingerprint"));
    }

    private static Adapter start(String record, String interval) throws IOException {
        return Adapter.start(Map.of(
                "lensward.record.url",
                record,
                "lensward.watch.interval",
                interval,
                "lensward.consumers",
                String.valueOf(THREADS),
                "camel.main.auto-startup",
                "false",
                "spring.artemis.embedded.data-directory",
                Files.createTempDirectory("lensward-bench").toString()));
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }
}

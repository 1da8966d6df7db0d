package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two adapters and a broker, each a process of its own, and one record: what they share. */
class SharedWorkTest {

    private static final Duration LONG = Duration.ofSeconds(120);
    private static final String WATCHES = "Watching the record from here";

    private final Path folder;

    SharedWorkTest(@TempDir Path folder) {
        this.folder = folder;
    }

    @Test
    void one_watches_both_plan_and_when_the_watcher_is_killed_the_other_takes_over() throws Exception {
        int port = freePort();
        List<Process> running = new ArrayList<>();
        try (RunningDay day = new RunningDay()) {
            running.add(java("broker", Map.of(), "org.lensward.flow.BrokerProcess", "" + port, folder.toString()));
            Process one = adapter(day, "one", port);
            Process other = adapter(day, "other", port);
            running.addAll(List.of(one, other));
            RunningDay.await("every booking has a plan", LONG, day::allPlanned);
            assertThat(watches("one")).as("one alone watches").isNotEqualTo(watches("other"));
            String watching = watches("one") ? "one" : "other";
            String waiting = watches("one") ? "other" : "one";

            (watches("one") ? one : other).destroyForcibly().waitFor(10, TimeUnit.SECONDS);
            Map<String, String> before = plans(day);
            measureAgain(day);
            RunningDay.await(
                    "the other plans what changed", LONG, () -> !plans(day).equals(before));

            assertThat(watches(waiting)).as("the other took over").isTrue();
            assertThat(log(watching)).contains(" plan ");
            assertThat(plans(day))
                    .as("one current plan each")
                    .hasSize(day.plans().size());
        } finally {
            running.forEach(Process::destroyForcibly);
        }
    }

    /** The fingerprint of each booking's current plan; a booking with two would fail here. */
    private static Map<String, String> plans(RunningDay day) {
        return day
                .client()
                .search()
                .forResource(Procedure.class)
                .where(Procedure.STATUS.exactly().code("preparation"))
                .count(500)
                .returnBundle(Bundle.class)
                .execute()
                .getEntry()
                .stream()
                .map(entry -> (Procedure) entry.getResource())
                .collect(Collectors.toMap(
                        plan -> plan.getBasedOnFirstRep().getReference(),
                        plan -> plan.getExtensionString(
                                "https://lensward.org/fhir/StructureDefinition/plan-fingerprint")));
    }

    /** Any measurement of the day, sent once more with a word about it: a new version. */
    private static void measureAgain(RunningDay day) {
        Observation length = (Observation) day.client()
                .search()
                .forResource(Observation.class)
                .where(Observation.STATUS.exactly().code("final"))
                .and(Observation.CODE.exactly().code("axial-length"))
                .returnBundle(Bundle.class)
                .execute()
                .getEntryFirstRep()
                .getResource();
        length.addNote().setText("measured again");
        day.client().update().resource(length).execute();
    }

    private Process adapter(RunningDay day, String name, int port) throws IOException {
        Map<String, Object> settings = new HashMap<>(day.settings());
        settings.put("spring.artemis.mode", "native");
        settings.put("spring.artemis.broker-url", "tcp://localhost:" + port + "?reconnectAttempts=-1");
        return java(name, settings, "org.lensward.Lensward", "run");
    }

    private Process java(String name, Map<String, Object> settings, String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        settings.forEach((key, value) -> command.add("-D" + key + "=" + value));
        command.addAll(List.of("-Dserver.port=0", "-cp", System.getProperty("java.class.path")));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(logFile(name).toFile())
                .start();
    }

    private boolean watches(String name) {
        return log(name).contains(WATCHES);
    }

    private String log(String name) {
        try {
            return Files.readString(logFile(name));
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
    }

    private Path logFile(String name) {
        return folder.resolve(name + ".log");
    }

    private static int freePort() throws IOException {
        try (ServerSocket any = new ServerSocket(0)) {
            return any.getLocalPort();
        }
    }
}

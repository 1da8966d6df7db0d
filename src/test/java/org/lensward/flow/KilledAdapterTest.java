package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Test;

/** The adapter is a process of its own here; it is killed outright, with no chance to tidy up, and started again on its queue. */
class KilledAdapterTest {

    private static final Duration LONG = Duration.ofSeconds(120);

    @Test
    void killed_between_two_plans_and_started_again_loses_and_doubles_nothing() throws Exception {
        try (RunningDay day = new RunningDay("killed-adapter")) {
            Process first = adapter(day);
            RunningDay.await("the first plan", LONG, () -> planned(day) >= 1);
            first.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
            assertThat(planned(day))
                    .as("killed in mid-work")
                    .isLessThan(day.plans().size());

            Process second = adapter(day);
            RunningDay.await("every booking has a plan", LONG, day::allPlanned);
            second.destroy();
            assertThat(second.waitFor(40, TimeUnit.SECONDS))
                    .as("stops when asked")
                    .isTrue();

            Map<String, Long> current = bookings(day);
            assertThat(current).hasSize(day.plans().size()).allSatisfy((booking, plans) -> assertThat(plans)
                    .isEqualTo(1));
            long proposing = day.plans().stream()
                    .filter(plan -> plan.primary().isPresent())
                    .count();
            assertThat(openChecks(day)).hasSize((int) proposing).doesNotHaveDuplicates();
        }
    }

    private static long planned(RunningDay day) {
        return day.plans().stream().filter(stored -> stored.plan().isPresent()).count();
    }

    private static Map<String, Long> bookings(RunningDay day) {
        Bundle found = day.client()
                .search()
                .forResource(Procedure.class)
                .where(Procedure.STATUS.exactly().code("preparation"))
                .count(500)
                .returnBundle(Bundle.class)
                .execute();
        return found.getEntry().stream()
                .map(entry -> (Procedure) entry.getResource())
                .collect(
                        Collectors.groupingBy(plan -> plan.getBasedOnFirstRep().getReference(), Collectors.counting()));
    }

    private static List<String> openChecks(RunningDay day) {
        Bundle found = day.client()
                .search()
                .forResource(Task.class)
                .count(500)
                .returnBundle(Bundle.class)
                .execute();
        return found.getEntry().stream()
                .map(entry -> (Task) entry.getResource())
                .filter(task -> task.getStatus() == TaskStatus.REQUESTED)
                .map(task -> task.getBasedOnFirstRep().getReference())
                .toList();
    }

    private static Process adapter(RunningDay day) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        day.settings().forEach((name, value) -> command.add("-D" + name + "=" + value));
        // Slow enough to be killed in the middle.
        command.add("-Dlensward.consumers=1");
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "org.lensward.Lensward", "run"));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(new File("target/killed-adapter.log")))
                .start();
    }
}

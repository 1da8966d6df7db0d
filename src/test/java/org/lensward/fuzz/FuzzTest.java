package org.lensward.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.StrictErrorHandler;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SitePlanning;
import org.lensward.record.site.SitePlanning.Planned;

/**
 * Spoiled records through the real reader and planner: nothing but a named refusal comes out, nothing hangs, and no plan rests silently on
 * a measurement whose side, unit, sign or patient was changed. {@link Verdict} says what "silently" is. {@code -Dlensward.fuzz=1000000}
 * asks for more cases than the usual.
 */
class FuzzTest {

    /** What makes a measurement another one. */
    enum Reason {
        SIDE,
        UNIT,
        SIGN,
        PATIENT
    }

    private static final int CASES = Integer.getInteger("lensward.fuzz", 50_000);
    private static final int IN_ONE_GO = 200;
    private static final long SEED = 20_261_125;

    /** Generous: a case takes a millisecond or two, the machine may be busy. */
    private static final int SECONDS_A_GO = 60;

    private static final FhirContext FHIR = Fhir.r4();
    private static final Records RECORDS = Records.read(FHIR);
    private static final LocalDate TODAY = LocalDate.parse("2026-11-25");
    private static final SitePlanning PLANNING = new SitePlanning(FHIR, PolicyFile.shipped(), SiteCodes.none());
    private static final BundlePlanning WRITING = new BundlePlanning(
            FHIR, PolicyFile.shipped(), Clock.fixed(Instant.parse("2026-11-25T08:00:00Z"), ZoneOffset.UTC));
    private static final int ONE_WRITTEN_OF = 10;

    private final List<String> wrong = new ArrayList<>();

    @Test
    void no_plan_rests_silently_on_a_measurement_of_another_side_unit_sign_or_patient() throws Exception {
        SafetyMutations mutations = new SafetyMutations(RECORDS);
        Map<String, List<Planned>> sound = new HashMap<>();
        for (int index = 0; index < RECORDS.names().size(); index++) {
            sound.put(
                    RECORDS.names().get(index), PLANNING.plan(RECORDS.bundles().get(index), TODAY));
        }
        each(CASES * 19 / 40, number -> {
            Mutant mutant = mutations.of(random(number));
            List<Planned> before = sound.getOrDefault(mutant.seed(), List.of());
            planned(number, mutant.toString(), mutant.bundle())
                    .forEach(after -> Verdict.of(before, after, mutant).ifPresent(fault -> note(number, fault)));
        });
        assertThat(wrong).isEmpty();
    }

    @Test
    void whatever_is_changed_a_plan_or_a_named_refusal_comes_out() throws Exception {
        AnyMutations mutations = new AnyMutations(RECORDS);
        each(CASES * 19 / 40, number -> {
            Mutant mutant = mutations.of(random(number));
            planned(number, mutant.toString(), mutant.bundle());
        });
        assertThat(wrong).isEmpty();
    }

    @Test
    void whatever_text_is_sent_a_plan_or_a_named_refusal_comes_out() throws Exception {
        TextMutations mutations = new TextMutations(RECORDS);
        each(CASES / 20, number -> {
            String text = mutations.of(random(number));
            try {
                if (FHIR.newJsonParser()
                                .setParserErrorHandler(new StrictErrorHandler())
                                .parseResource(text)
                        instanceof Bundle bundle) {
                    planned(number, "text", bundle);
                }
            } catch (DataFormatException refused) {
                assertThat(refused).isNotNull();
            } catch (RuntimeException other) {
                note(number, "parser: " + told(other));
            }
        });
        assertThat(wrong).isEmpty();
    }

    private static SplittableRandom random(int number) {
        return new SplittableRandom(SEED + number);
    }

    private List<Planned> planned(int number, String what, Bundle bundle) {
        try {
            if (number % ONE_WRITTEN_OF == 0) {
                WRITING.plan(bundle);
            }
            return PLANNING.plan(bundle, TODAY);
        } catch (UnreadableRecord named) {
            return List.of();
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError escaped) {
            note(number, what + ": " + told(escaped));
            return List.of();
        }
    }

    private static String told(Throwable escaped) {
        StackTraceElement[] trace = escaped.getStackTrace();
        StringBuilder said = new StringBuilder(escaped.toString());
        for (StackTraceElement frame : trace) {
            if (frame.getClassName().startsWith("org.lensward")) {
                said.append(" at ").append(frame);
                break;
            }
        }
        return said.substring(0, Math.min(400, said.length()));
    }

    private synchronized void note(int number, String fault) {
        if (wrong.size() < 40) {
            wrong.add((number + " " + fault).replaceAll("[^\\x20-\\x7e]", "?"));
        }
    }

    /** Every case, some hundreds in one go, two goes at once; a go that does not end is named. */
    private static void each(int cases, IntConsumer test) throws Exception {
        ExecutorService workers = Executors.newFixedThreadPool(2, task -> {
            Thread thread = new Thread(task, "fuzz");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<?>> goes = new ArrayList<>();
            for (int from = 0; from < cases; from += IN_ONE_GO) {
                int first = from;
                int end = Math.min(cases, from + IN_ONE_GO);
                goes.add(workers.submit(() -> IntStream.range(first, end).forEach(test)));
            }
            for (int go = 0; go < goes.size(); go++) {
                try {
                    goes.get(go).get(SECONDS_A_GO, TimeUnit.SECONDS);
                } catch (TimeoutException hangs) {
                    throw new AssertionError("One of the cases from " + go * IN_ONE_GO + " hangs", hangs);
                }
            }
        } finally {
            workers.shutdownNow();
        }
    }
}

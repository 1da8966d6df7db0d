package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.UNIT_ALREADY_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_HELD_FOR_ANOTHER;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.carton;
import static org.lensward.record.bank.BankRecord.codes;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.slf4j.LoggerFactory;

/** Two clerks and one carton, on a real FHIR server. Optimistic locking as HL7 FHIR R4 (4.0.1), RESTful API 3.1.0.5, has it. */
class LensBankRacesTest {

    private static final int RACES = 200;
    private static final int DELIVERIES = 30;
    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    /** The server reports every conflict as an error of its own, with its SQL. */
    @BeforeAll
    static void expectConflicts() {
        for (String logger : List.of(
                "org.hibernate.engine.jdbc.spi.SqlExceptionHelper",
                "ca.uhn.fhir.rest.server.interceptor.ExceptionHandlingInterceptor")) {
            ((Logger) LoggerFactory.getLogger(logger)).setLevel(Level.OFF);
        }
    }

    @Test
    void two_hundred_races_for_one_carton_have_two_hundred_winners() throws Exception {
        String one = RECORD.book("one");
        String other = RECORD.book("other");
        List<String> cartons = IntStream.range(0, RACES)
                .mapToObj(race -> name(RECORD.received("RACE", "race-" + race)))
                .toList();
        ExecutorService clerks = Executors.newFixedThreadPool(2);
        CyclicBarrier start = new CyclicBarrier(2);
        int overtaken = 0;
        try {
            for (String carton : cartons) {
                Future<Outcome<LensUnit>> first = clerks.submit(reserve(carton, one, start));
                Future<Outcome<LensUnit>> second = clerks.submit(reserve(carton, other, start));
                boolean oneWon = first.get().value().isPresent();
                assertThat(second.get().value().isPresent()).isEqualTo(!oneWon);
                List<FindingCode> told = codes(oneWon ? second.get() : first.get());
                assertThat(told).isSubsetOf(UNIT_MOVED_MEANWHILE, UNIT_HELD_FOR_ANOTHER);
                overtaken += told.contains(UNIT_MOVED_MEANWHILE) ? 1 : 0;
                assertThat(ready(BANK.unit(carton)).heldFor()).contains(oneWon ? one : other);
            }
        } finally {
            clerks.shutdownNow();
        }
        assertThat(overtaken).as("races that the version decided").isPositive();
        assertThat(ready(BANK.heldFor(one)).size() + ready(BANK.heldFor(other)).size())
                .isEqualTo(RACES);
        assertThat(RECORD.search("Provenance?entity=" + one).size()
                        + RECORD.search("Provenance?entity=" + other).size())
                .as("what lost left no trail")
                .isEqualTo(RACES);
    }

    @Test
    void a_carton_taken_in_by_two_at_once_is_one_carton_taken_in_once() throws Exception {
        ExecutorService clerks = Executors.newFixedThreadPool(2);
        CyclicBarrier start = new CyclicBarrier(2);
        try {
            for (int race = 0; race < DELIVERIES; race++) {
                Delivery carton = carton("RACE", "delivered-" + race);
                List<Outcome<LensUnit>> answers = new ArrayList<>();
                for (Future<Outcome<LensUnit>> each :
                        clerks.invokeAll(List.of(receive(carton, start), receive(carton, start)))) {
                    answers.add(each.get());
                }
                assertThat(answers.stream().flatMap(each -> each.value().stream()))
                        .hasSize(1);
                assertThat(answers.stream().flatMap(each -> codes(each).stream()))
                        .singleElement()
                        .isIn(UNIT_MOVED_MEANWHILE, UNIT_ALREADY_IN_BANK);
                String name = UnitName.bySerial(carton.identity()).orElseThrow();
                assertThat(RECORD.search("Provenance?target=" + name)).hasSize(1);
            }
        } finally {
            clerks.shutdownNow();
        }
    }

    private static Callable<Outcome<LensUnit>> receive(Delivery carton, CyclicBarrier start) {
        return () -> {
            start.await();
            return BANK.receive(carton, CLERK);
        };
    }

    private static Callable<Outcome<LensUnit>> reserve(String carton, String booking, CyclicBarrier start) {
        return () -> {
            start.await();
            return BANK.move(carton, new Movement.Reserve(booking, DAY), CLERK);
        };
    }
}

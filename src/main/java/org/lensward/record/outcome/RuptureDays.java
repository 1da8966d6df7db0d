package org.lensward.record.outcome;

import java.io.IOException;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.complication.Operation;
import org.lensward.quantity.Probability;

/** Operations in the order of their days, sorted on disk: a series runs forward in time, an export does not. */
final class RuptureDays implements AutoCloseable {

    private final SortedSpool spool;

    private RuptureDays(SortedSpool spool) {
        this.spool = spool;
    }

    static RuptureDays open() throws IOException {
        return new RuptureDays(SortedSpool.open());
    }

    /** One person's operations; one told twice counts once. */
    void add(List<OperatedEye> ofOnePerson) throws IOException {
        Set<String> seen = new HashSet<>();
        for (OperatedEye eye : ofOnePerson) {
            Optional<Operation> operation = Operation.of(eye);
            if (operation.isPresent() && seen.add(eye.side() + " " + eye.operatedOn())) {
                spool.add(
                        operation.get().on().toString(),
                        operation.get().expected().value() + " "
                                + operation.get().rupture() + " "
                                + operation.get().surgeon());
            }
        }
    }

    /** Hands over every operation, the earliest first. */
    void forEach(Taker taker) throws IOException {
        spool.forEachKey((day, rows) -> {
            for (String row : rows) {
                String[] parts = row.split(" ", 3);
                Probability expected = Probability.of(Double.parseDouble(parts[0]));
                taker.take(LocalDate.parse(day), expected, Boolean.parseBoolean(parts[1]));
            }
        });
    }

    @Override
    public void close() throws IOException {
        spool.close();
    }

    /** Takes one operation. */
    interface Taker {
        void take(LocalDate day, Probability expected, boolean rupture);
    }
}

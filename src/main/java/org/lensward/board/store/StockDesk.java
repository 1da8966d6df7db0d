package org.lensward.board.store;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Order;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.plan.Policy;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.stock.StockSheet;
import org.lensward.record.stock.SupplyRequests;

/** The stock check of some days and its orders, on the running record. */
public final class StockDesk {

    private final RecordClient client;
    private final StockPolicy policy;
    private final Clock clock;

    public StockDesk(RecordClient client, Policy policy, Clock clock) {
        this.client = client;
        this.policy = policy.stock();
        this.clock = clock;
    }

    /**
     * A stock check and what it was made on.
     *
     * @param sheet who gets what, what is short, what to order
     * @param shelf plans, locations, lens models, use and orders
     */
    public record Checked(StockSheet sheet, Shelf shelf) {}

    /** From today, so many days, today included. */
    public StockSheet.Days ahead(int days) {
        LocalDate today = LocalDate.now(clock);
        return new StockSheet.Days(today, today.plusDays(days - 1L), today);
    }

    /** The days from one to another, both included. */
    public StockSheet.Days between(LocalDate from, LocalDate to) {
        if (to.isBefore(from)) {
            throw new UnreadableRecord(IssueType.VALUE, "to", "The last day, " + to + ", is before " + from + ".");
        }
        return new StockSheet.Days(from, to, LocalDate.now(clock));
    }

    /** Looks for every lens of every planned kit among those cartons. */
    public Checked check(StockSheet.Days days, List<LensUnit> units) {
        Stream<String> owners = units.stream()
                .map(unit -> unit.owner().name())
                .distinct()
                .filter(owner -> owner.startsWith("Organization/"));
        Shelf shelf = new Shelf(client.gather(Stream.concat(StockSheet.questions(policy, days.today()).stream(), owners)
                .toList()));
        return new Checked(StockSheet.of(shelf, units, policy, days), shelf);
    }

    /** Writes what the check says to order; what was ordered before is not ordered again. */
    public List<Order> order(Checked checked) {
        Bundle orders = SupplyRequests.transaction(checked.sheet().allocation().orders(), checked.shelf());
        if (orders.hasEntry()) {
            client.post(orders);
        }
        return checked.sheet().allocation().orders();
    }
}

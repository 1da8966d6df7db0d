package org.lensward.board.api;

import java.time.Clock;
import java.time.LocalDate;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.LensBank;
import org.lensward.record.stock.StockSheet;

/** The stock check on what the running record and its lens bank hold now. */
public final class StockLook {

    private final RecordClient client;
    private final LensBank bank;
    private final StockPolicy policy;
    private final Clock clock;

    public StockLook(RecordClient client, LensBank bank, StockPolicy policy, Clock clock) {
        this.client = client;
        this.bank = bank;
        this.policy = policy;
        this.clock = clock;
    }

    /**
     * What was found.
     *
     * @param shelf what was read
     * @param sheet what it comes to
     */
    public record Seen(Shelf shelf, StockSheet sheet) {}

    /** Of every operation that is still to come. */
    public Seen ahead() {
        return between(LocalDate.now(clock), LocalDate.MAX);
    }

    /**
     * Of the operations from one day to another.
     *
     * @throws Refusal where the bank cannot be read
     */
    public Seen between(LocalDate from, LocalDate to) {
        if (to.isBefore(from)) {
            throw new UnreadableRecord(IssueType.VALUE, "to", "The last day, " + to + ", is before " + from + ".");
        }
        LocalDate today = LocalDate.now(clock);
        Shelf shelf = new Shelf(client.gather(StockSheet.questions(policy, today)));
        return new Seen(
                shelf,
                StockSheet.of(shelf, Refusal.unless(bank.units()), policy, new StockSheet.Days(from, to, today)));
    }
}

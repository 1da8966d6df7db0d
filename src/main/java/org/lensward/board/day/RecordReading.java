package org.lensward.board.day;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.plan.Policy;
import org.lensward.record.Shelf;
import org.lensward.record.bank.LensBank;
import org.lensward.record.stock.StockSheet;

/** Reads lists and cartons from the record. */
final class RecordReading implements DayView.Reading {

    private final RecordClient client;
    private final LensBank bank;
    private final Policy policy;
    private final Clock clock;

    RecordReading(RecordClient client, LensBank bank, Policy policy, Clock clock) {
        this.client = client;
        this.bank = bank;
        this.policy = policy;
        this.clock = clock;
    }

    @Override
    public DaySnapshot lists(Map<String, StockWord> stock) {
        var asked = clock.instant();
        return DaySnapshot.of(asked, new EyeLines(new Shelf(client.gather(EyeLines.QUESTIONS))).all(), stock);
    }

    @Override
    public Map<String, StockWord> stock(LocalDate from, LocalDate to) {
        LocalDate today = LocalDate.now(clock);
        List<LensUnit> units = bank.units().value().orElse(List.of());
        Shelf shelf = new Shelf(client.gather(StockSheet.questions(policy.stock(), today)));
        return StockWords.of(StockSheet.of(shelf, units, policy.stock(), new StockSheet.Days(from, to, today)));
    }
}

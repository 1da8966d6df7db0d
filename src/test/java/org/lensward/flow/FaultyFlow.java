package org.lensward.flow;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.lensward.board.BoardConfiguration;
import org.lensward.flow.SetAside.Kind;

/** A running adapter, looked at from outside by what people are given to look at it. */
public final class FaultyFlow implements AutoCloseable {

    private final Adapter adapter;
    private final FlowState state;
    private final ParkedBookings parked;

    private FaultyFlow(Adapter adapter) {
        this.adapter = adapter;
        this.state = adapter.part(FlowState.class);
        this.parked = adapter.part(ParkedBookings.class);
    }

    public static FaultyFlow start(Map<String, Object> settings) {
        return new FaultyFlow(Adapter.start(settings));
    }

    /** With what people and other systems call beside it. */
    public static FaultyFlow serve(Map<String, Object> settings) {
        return new FaultyFlow(Adapter.serve(settings, BoardConfiguration.class));
    }

    public int port() {
        return adapter.port();
    }

    public boolean mayWork() {
        return adapter.mayWork();
    }

    /** Has everything compared now, as it is each night; what was found. */
    public Reconciliation.Report reconcile() {
        Reconciliation nightly = adapter.part(Reconciliation.class);
        Instant before = Instant.now();
        nightly.dueNow();
        RunningDay.await("a comparison", Duration.ofSeconds(60), () -> nightly.last()
                .filter(each -> !each.at().isBefore(before))
                .isPresent());
        return nightly.last().orElseThrow();
    }

    /** Until nothing waits and nothing is in hand, twice in a row. */
    public void awaitQuiet(Duration longest) {
        int[] quiet = {0};
        RunningDay.await("the flow is quiet: " + state.now(), longest, () -> {
            FlowState.Snapshot now = state.now();
            boolean still = now.look().isPresent() && now.bookings().depth() == 0 && now.inHand() == 0;
            quiet[0] = still ? quiet[0] + 1 : 0;
            return quiet[0] > 2;
        });
    }

    public void awaitPlan(BooleanSupplier isThere) {
        RunningDay.await("a plan", Duration.ofSeconds(30), isThere);
    }

    /** For which reasons that booking is parked. */
    public List<String> parked(String name) {
        return parked.all().stream()
                .filter(each -> each.name().equals("ServiceRequest/booking-" + name))
                .map(SetAside::reason)
                .toList();
    }

    public List<SetAside> parked() {
        return parked.all();
    }

    public int replay(String reason) {
        return parked.replay(each -> each.reason().equals(reason));
    }

    public boolean replayOne(String name) {
        return parked.replay(Kind.BOOKING, "ServiceRequest/booking-" + name);
    }

    public void dryRun(boolean on) {
        adapter.part(DryRun.class).turn(on);
    }

    public void awaitReport(String name) {
        RunningDay.await("a report", Duration.ofSeconds(30), () -> !report(name).isEmpty());
    }

    public String report(String name) {
        return adapter.part(DryRun.class).reports().stream()
                .filter(each -> each.booking().equals("ServiceRequest/booking-" + name))
                .map(WouldWrite::toString)
                .findFirst()
                .orElse("");
    }

    @Override
    public void close() {
        adapter.close();
    }
}

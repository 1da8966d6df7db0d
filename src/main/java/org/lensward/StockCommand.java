package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import org.hl7.fhir.r4.model.Bundle;
import org.jspecify.annotations.Nullable;
import org.lensward.finding.Outcome;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.LensBank;
import org.lensward.record.stock.StockSheet;
import org.lensward.record.stock.SupplyRequests;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Whether every lens of the coming days is in the building, and what to order. */
@Command(
        name = "stock",
        mixinStandardHelpOptions = true,
        description = {
            "Looks for every lens of every planned kit in the lens bank: which carton, or what is short, why, the nearest power in stock"
                    + " and what to order by when; then what is below par and what expires soon.",
            "Reads the plans and the bank of a running record (--record), or Bundles with bookings and their data, the bank's Devices and"
                    + " the Locations, plans in memory and writes nothing.",
            "Exit 0: all covered. 3: something is short. 2: the input cannot be read."
        })
final class StockCommand implements Callable<Integer> {

    private static final int COVERED = 0;
    private static final int SHORT = 3;
    private static final int A_WEEK = 6;

    @Spec
    private @Nullable CommandSpec command;

    @Parameters(
            arity = "0..*",
            paramLabel = "BUNDLE.json",
            description = "files to read together, or - for standard input")
    private List<String> inputs = List.of("-");

    @Option(names = "--record", paramLabel = "URL", description = "base address of a FHIR R4 record with plans in it")
    private @Nullable URI record;

    @Option(
            names = "--from",
            paramLabel = "DATE",
            description = "first day, such as 2026-12-10 (default: today; of Bundles, every day in them)")
    private @Nullable LocalDate from;

    @Option(names = "--to", paramLabel = "DATE", description = "last day (default: six days after the first)")
    private @Nullable LocalDate to;

    @Option(names = "--today", paramLabel = "DATE", description = "look as on that day (default: the clock's)")
    private @Nullable LocalDate today;

    @Mixin
    private final HospitalFiles hospital = new HospitalFiles();

    @Option(
            names = "--order",
            description =
                    "write the orders into the record; of Bundles, print the transaction to standard output and the"
                            + " rest to standard error. Ordered twice, it is ordered once")
    private boolean order;

    @Override
    public Integer call() throws IOException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        FhirContext fhir = Fhir.r4();
        IParser json = fhir.newJsonParser().setPrettyPrint(true);
        Policy chosen = hospital.policy();
        StockSheet.Days days = days();
        try {
            Seen seen = record == null ? inBundles(fhir, days) : inRecord(fhir, chosen, days, record);
            StockSheet sheet =
                    StockSheet.of(seen.shelf(), seen.units().value().orElse(List.of()), chosen.stock(), days);
            boolean printsOrders = order && record == null;
            (printsOrders ? System.err : out)
                    .print(new StockReport(seen.shelf(), sheet).of(seen.units(), chosen.stock()));
            if (order) {
                Bundle orders = SupplyRequests.transaction(sheet.allocation().orders(), seen.shelf());
                place(orders, fhir, json, out);
            }
            return sheet.allocation().shortages().isEmpty() ? COVERED : SHORT;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused, json, out);
        }
    }

    /**
     * What the check looks at.
     *
     * @param shelf plans, locations, use and orders
     * @param units the bank's cartons, with what could not be read of them
     */
    private record Seen(Shelf shelf, Outcome<List<LensUnit>> units) {}

    private Seen inBundles(FhirContext fhir, StockSheet.Days days) throws IOException {
        Clock clock = today == null
                ? Clock.system(ZoneId.systemDefault())
                : Clock.fixed(days.today().atStartOfDay().toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
        Bundle all = BundleInput.readAll(fhir, inputs);
        Shelf shelf = new Shelf(PlannedBundle.of(all, hospital.planning(fhir, clock)));
        return new Seen(shelf, LensBank.units(fhir, shelf));
    }

    private static Seen inRecord(FhirContext fhir, Policy chosen, StockSheet.Days days, URI url) {
        RecordClient client = RecordClient.at(url, fhir);
        Bundle gathered = client.gather(StockSheet.questions(chosen.stock(), days.today()));
        return new Seen(new Shelf(gathered), new LensBank(fhir, client).units());
    }

    private void place(Bundle orders, FhirContext fhir, IParser json, PrintStream out) {
        if (record == null) {
            out.println(json.encodeResourceToString(orders));
        } else if (orders.hasEntry()) {
            RecordClient.at(record, fhir).post(orders);
            out.println("Ordered: " + orders.getEntry().size() + ", written as SupplyRequests.");
        } else {
            out.println("Ordered: nothing new.");
        }
    }

    private StockSheet.Days days() {
        LocalDate now = today == null ? LocalDate.now(ZoneId.systemDefault()) : today;
        boolean everyDay = record == null && from == null;
        LocalDate first = from != null ? from : everyDay ? LocalDate.MIN : now;
        LocalDate last = to != null ? to : everyDay ? LocalDate.MAX : first.plusDays(A_WEEK);
        if (last.isBefore(first) && command != null) {
            throw new ParameterException(command.commandLine(), "The last day, " + last + ", is before " + first);
        }
        return new StockSheet.Days(first, last, now);
    }
}

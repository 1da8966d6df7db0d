package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.hl7.fhir.r4.model.Bundle;
import org.jspecify.annotations.Nullable;
import org.lensward.board.DaySheet;
import org.lensward.board.DaySheets;
import org.lensward.board.DayTable;
import org.lensward.board.TheatreList;
import org.lensward.flow.RecordClient;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.risk.preparation.PreparationPolicy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows each theatre's day: a suggested order, and everything to bring. */
@Command(
        name = "day",
        mixinStandardHelpOptions = true,
        description = {
            "Shows each theatre's day, by booking: in which order to operate and why, and what to bring, summed.",
            "Reads the plans of a running record (--record), or plans the bookings of a Bundle and writes nothing.",
            "Exit 0: shown. 2: the input cannot be read."
        })
final class DayCommand implements Callable<Integer> {

    @Parameters(arity = "0..1", paramLabel = "BUNDLE.json", description = "the file to read, or - for standard input")
    private String input = "-";

    @Option(names = "--record", paramLabel = "URL", description = "base address of a FHIR R4 record with plans in it")
    private @Nullable URI record;

    @Option(names = "--date", paramLabel = "DATE", description = "that day alone, such as 2026-12-10")
    private String date = "";

    @Mixin
    private final HospitalFiles hospital = new HospitalFiles();

    @Override
    public Integer call() throws IOException {
        FhirContext fhir = Fhir.r4();
        PreparationPolicy preparation = hospital.policy().preparation();
        try {
            Bundle gathered = record == null
                    ? planned(fhir)
                    : RecordClient.at(record, fhir).gather(TheatreList.QUESTIONS);
            List<DaySheet> sheets = DaySheets.of(new Shelf(gathered), preparation).stream()
                    .filter(sheet -> date.isEmpty() || sheet.day().equals(date))
                    .toList();
            System.out.print(DayTable.of(sheets));
            return 0;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused);
        }
    }

    private Bundle planned(FhirContext fhir) throws IOException {
        Bundle all = BundleInput.read(fhir, input);
        return PlannedBundle.of(all, hospital.planning(fhir, Clock.system(ZoneId.systemDefault())));
    }
}

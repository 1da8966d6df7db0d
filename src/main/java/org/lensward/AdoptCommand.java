package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.RecordClient;
import org.lensward.outcome.constant.Proposal;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.outcome.AdoptedConstant;
import org.lensward.record.outcome.ConstantAdoption;
import org.lensward.record.outcome.OutcomeReading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** A named clinician takes on a constant that the eyes suggest. */
@Command(
        name = "adopt",
        mixinStandardHelpOptions = true,
        description = {
            "Puts one proposed constant into its lens model in the record, as a new version with a trail. Every open booking with that lens is"
                    + " planned again and its lens check voided. Never without a name.",
            "Exit 0: adopted. 3: refused, and why. 2: the input cannot be read."
        })
final class AdoptCommand implements Callable<Integer> {

    private static final int ADOPTED = 0;
    private static final int REFUSED = 3;

    @ParentCommand
    private OutcomesCommand outcomes = new OutcomesCommand();

    @Parameters(index = "0", paramLabel = "CONSTANT", description = "as outcomes names it, such as c-1a2b3c4d")
    private String constant = "";

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "FILE",
            description = "the eyes; those of the record if absent")
    private List<Path> files = List.of();

    @Option(
            names = "--record",
            required = true,
            paramLabel = "URL",
            description = "base address of the record with the lens models")
    private @Nullable URI record;

    @Option(
            names = "--clinician",
            required = true,
            paramLabel = "WHO",
            description = "who answers for it: Practitioner/..., or a name")
    private String clinician = "";

    @Option(
            names = "--constants-version",
            required = true,
            paramLabel = "NAME",
            description = "the hospital's name of its constants from then on")
    private String version = "";

    @Override
    public Integer call() throws IOException {
        FhirContext fhir = Fhir.r4();
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        if (record == null || clinician.isBlank() || version.isBlank()) {
            return refuse("a constant is adopted by a named clinician under a named version");
        }
        RecordClient client = RecordClient.at(record, fhir);
        try (OutcomeReading reading = outcomes.reading(fhir, files, files.isEmpty() ? record : null)) {
            Optional<Proposal> chosen = outcomes.study(reading).proposals().stream()
                    .filter(each -> ConstantAdoption.name(each).equals(constant))
                    .findFirst();
            return chosen.isEmpty()
                    ? refuse("the eyes suggest no constant " + constant)
                    : adopt(chosen.get(), client, out);
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused);
        }
    }

    private int adopt(Proposal proposal, RecordClient client, PrintStream out) {
        Clock clock = Clock.system(ZoneId.systemDefault());
        String said =
                AdoptedConstant.of(client, proposal).by(clinician, LocalDate.now(clock), version, clock.instant());
        boolean refused = said.startsWith(AdoptedConstant.NOT);
        (refused ? System.err : out).println(said);
        return refused ? REFUSED : ADOPTED;
    }

    private static int refuse(String why) {
        System.err.println("Not adopted: " + why + ".");
        return REFUSED;
    }
}

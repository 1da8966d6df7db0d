package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
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
import org.lensward.board.api.Bookings;
import org.lensward.board.api.PresentedJson;
import org.lensward.board.step.BundledBooking;
import org.lensward.board.step.CheckedBooking;
import org.lensward.board.step.RecordedBooking;
import org.lensward.board.step.Scanned;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SitePlanning;
import org.lensward.record.site.SiteSearch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** One step of one lens check: what people present against the plan. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Compares the lens in hand with the plan at one checkpoint and prints each difference with its remedy.",
            "Of Bundles (booking and data, plan and check so far, the bank's Devices): plans if there is no plan, writes the transaction"
                    + " Bundle that would be posted to standard output. Of a running record (--record): posts it.",
            "Exit 0: passed. 3: stopped or refused. 4: the scan cannot be read, nothing is written. 2: the input cannot be read (an"
                    + " OperationOutcome says why)."
        },
        footerHeading =
                "%nWhat people present, as JSON; what is left out was not stated, and what was not stated differs:%n",
        footer = {
            "  patient    {numbers: [{system, value}], birth-date: \"1953-04-17\"}",
            "  eyes       {booking, sheet, biometry, mark}: \"right\" or \"left\" as each place states it",
            "  plan       the fingerprint on the plan's sheet, or its beginning",
            "  carton     {state: \"intact\", \"damaged\" or \"opened\",",
            "              read: {lens: {model: \"DeviceDefinition/x\", power: \"22 D\", cylinder: \"2.25 D\"}, reader}}",
            "  axis       \"87 deg\", for a toric lens",
            "  allergies  what the patient does not tolerate, asked now; [] says none",
            "  back-ups   [{role: \"spare\", \"sulcus\" or \"anterior-chamber\", lens}]",
            "  people     {reader: \"Practitioner/x\", second: \"Practitioner/y\"}",
            "  at         \"2026-12-10T08:20:00+01:00\"; the one field that must be there",
            "  override   {clinician, reason, second}: go on in spite of a difference, where the policy allows it"
        })
final class CheckCommand implements Callable<Integer> {

    private static final int PASSED = 0;
    private static final int STOPPED = 3;
    private static final int SCAN_UNREADABLE = 4;

    @Spec
    private @Nullable CommandSpec command;

    @Parameters(
            arity = "0..*",
            paramLabel = "BUNDLE.json",
            description = "files to read together, or - for standard input")
    private List<String> inputs = List.of("-");

    @Option(names = "--record", paramLabel = "URL", description = "base address of a FHIR R4 record with plans in it")
    private @Nullable URI record;

    @Option(names = "--booking", required = true, paramLabel = "ID", description = "such as booking-01")
    private String booking = "";

    @Option(
            names = "--checkpoint",
            paramLabel = "STEP",
            description = "pick, sign-in, time-out, before-opening or sign-out; with --presented")
    private @Nullable String checkpoint;

    @Option(names = "--presented", paramLabel = "FILE", description = "what people present (see below)")
    private @Nullable Path presented;

    @Option(
            names = "--scan",
            paramLabel = "TEXT",
            description = "what the scanner gave of the carton; once for each barcode")
    private List<String> scans = List.of();

    @Option(names = "--confirm", paramLabel = "SURGEON", description = "before that, this surgeon confirms the plan")
    private @Nullable String surgeon;

    @Mixin
    private final HospitalFiles hospital = new HospitalFiles();

    @Override
    public Integer call() throws IOException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        FhirContext fhir = Fhir.r4();
        IParser json = fhir.newJsonParser().setPrettyPrint(true);
        try {
            Optional<Presentation> step = step();
            CheckedBooking checked = checked(fhir);
            int exit = run(checked, step);
            checked.written()
                    .filter(any -> exit != SCAN_UNREADABLE)
                    .ifPresent(bundle -> out.println(json.encodeResourceToString(bundle)));
            return exit;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused, json, out);
        }
    }

    /**
     * One checkpoint and what is presented there.
     *
     * @param at the checkpoint
     * @param told what people wrote
     * @param label what the scans say, or why they cannot be read
     */
    private record Presentation(Checkpoint at, PresentedJson told, Outcome<CartonLabel> label) {}

    private Optional<Presentation> step() {
        if (checkpoint == null && presented == null && surgeon != null) {
            return Optional.empty();
        }
        if (checkpoint == null || presented == null) {
            throw wrong("--checkpoint and --presented go together");
        }
        Checkpoint at = Checkpoint.of(checkpoint).orElseThrow(() -> wrong("There is no checkpoint " + checkpoint));
        return Optional.of(new Presentation(
                at, PresentedJson.read(presented), Scanned.label(scans, LocalDate.now(ZoneId.systemDefault()))));
    }

    private CheckedBooking checked(FhirContext fhir) throws IOException {
        Policy policy = hospital.policy();
        SiteCodes codes = hospital.siteCodes();
        String name = Bookings.name(booking);
        Clock clock = Clock.system(ZoneId.systemDefault());
        LensChecks checks = new LensChecks(new SitePlanning(fhir, policy, codes), policy.check(), clock);
        return record == null
                ? new BundledBooking(BundleInput.readAll(fhir, inputs), name, checks, fhir)
                        .planned(hospital.planning(fhir, clock))
                : new RecordedBooking(fhir, record, name, new SiteSearch(codes), checks);
    }

    private int run(CheckedBooking checked, Optional<Presentation> step) {
        List<Finding> unread = step.filter(each -> each.label().value().isEmpty()).stream()
                .flatMap(each -> each.label().findings().stream())
                .toList();
        if (!unread.isEmpty()) {
            report("scan", unread);
            return SCAN_UNREADABLE;
        }
        if (surgeon != null) {
            String confirming = surgeon;
            int confirmed = said(
                    "confirmation", checked.act((checks, now) -> checks.confirm(now, checked.booking(), confirming)));
            if (confirmed != PASSED) {
                return confirmed;
            }
        }
        return step.map(each -> said(each.at().code(), present(checked, each))).orElse(PASSED);
    }

    private static CheckAnswer present(CheckedBooking checked, Presentation step) {
        CartonLabel label = step.label().value().orElseThrow();
        Outcome<List<LensUnit>> bank = checked.units();
        if (!bank.findings().isEmpty()) {
            report("the bank, in part", bank.findings());
        }
        Attempt attempt = new Attempt(
                step.at(),
                step.told().with(Scanned.of(label, bank, checked.booking())),
                step.told().exemption());
        return checked.act((checks, now) -> checks.present(now, checked.booking(), attempt));
    }

    private static int said(String step, CheckAnswer answer) {
        report(step + ": " + state(answer), answer.findings());
        boolean scan = answer.findings().stream().anyMatch(each -> each.code() == FindingCode.CHECK_SCAN_UNREADABLE);
        return scan ? SCAN_UNREADABLE : answer.findings().isEmpty() ? PASSED : STOPPED;
    }

    private static String state(CheckAnswer answer) {
        if (answer instanceof CheckAnswer.Write write) {
            return write.state().toString();
        }
        return answer instanceof CheckAnswer.Unchanged before ? before.state() + " before" : "refused, nothing written";
    }

    private static void report(String what, List<Finding> findings) {
        System.err.println(what);
        findings.forEach(
                each -> System.err.println("  " + each.code().code() + ": " + each.message() + " " + each.remedy()));
    }

    private ParameterException wrong(String why) {
        if (command == null) {
            throw new IllegalStateException(why);
        }
        return new ParameterException(command.commandLine(), why);
    }
}

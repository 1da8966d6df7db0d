package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.camel.Exchange;
import org.apache.camel.ExchangeProperty;
import org.apache.camel.Header;
import org.apache.camel.component.file.FileConstants;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.FhirFile;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.MeasurementTable;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Where files of biometry arrive: stored whole, or refused whole with a report. */
public final class FileDesk {

    private static final Logger LOG = LoggerFactory.getLogger(FileDesk.class);

    private final FhirContext fhir;
    private final Site site;
    private final FileSettings settings;
    private final IncomingStore store;

    public FileDesk(FhirContext fhir, Site site, FileSettings settings, IncomingStore store) {
        this.fhir = fhir;
        this.site = site;
        this.settings = settings;
        this.store = store;
    }

    /** Reads one file. */
    public List<Incoming> read(@Header(FileConstants.FILE_ABSOLUTE_PATH) String path) throws IOException {
        Path file = Path.of(path);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new RefusedInput(FindingCode.FILE_NOT_ACCEPTED, "the file", "it is no plain file");
        }
        if (!Path.of(settings.folder()).toRealPath().equals(file.toRealPath().getParent())) {
            throw new RefusedInput(FindingCode.FILE_NOT_ACCEPTED, "the file", "it is not in the watched folder itself");
        }
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".csv") && !name.endsWith(".json") && !name.endsWith(".ndjson")) {
            throw new RefusedInput(FindingCode.FILE_NOT_ACCEPTED, "the file", "its name ends otherwise");
        }
        String text = text(file);
        if (name.endsWith(".csv")) {
            return MeasurementTable.read(text, site);
        }
        return name.endsWith(".ndjson") ? FhirFile.lines(fhir, text, site) : FhirFile.bundle(fhir, text, site);
    }

    private String text(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS)) {
            byte[] bytes = in.readNBytes(Math.toIntExact(settings.longest()) + 1);
            if (bytes.length > settings.longest()) {
                throw new RefusedInput(FindingCode.FILE_NOT_ACCEPTED, "the file", "it is longer than allowed");
            }
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException wrong) {
            throw new RefusedInput(FindingCode.FILE_UNREADABLE, "the file", "its text", "it is not UTF-8");
        }
    }

    /** Stores all that a file brings. */
    public void store(List<Incoming> incoming) {
        store.storeAll(incoming);
        LOG.info("A file stored: {} pieces", incoming.size());
    }

    /** Why the file is refused, as FHIR says it. */
    public String report(@ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        OperationOutcome outcome = new OperationOutcome();
        if (failure instanceof RefusedInput refusal) {
            LOG.warn("A file refused at {}: {}", refusal.place(), refusal.code().code());
            outcome = refusal.outcome();
        } else {
            LOG.error("A file set aside after {}", failure.getClass().getSimpleName());
            outcome.addIssue()
                    .setSeverity(OperationOutcome.IssueSeverity.ERROR)
                    .setCode(OperationOutcome.IssueType.EXCEPTION)
                    .setDiagnostics("The record would not store it ("
                            + failure.getClass().getSimpleName()
                            + "). Nothing of it was stored; put the file in again.");
        }
        return fhir.newJsonParser().setPrettyPrint(true).encodeResourceToString(outcome);
    }
}

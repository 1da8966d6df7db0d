package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.board.step.Scanned;
import org.lensward.lens.label.CartonLabel;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** What a carton's label says. It never says the power. */
@RestController
@RequestMapping("/api/labels")
@Tag(name = "Lens bank")
public final class LabelsApi {

    private final Clock clock;

    public LabelsApi(Clock clock) {
        this.clock = clock;
    }

    /**
     * What the scanner gave, one text for each barcode.
     *
     * @param scans as they came
     */
    public record Scans(List<String> scans) {}

    /**
     * A label, read.
     *
     * @param issuer whose rules it follows
     * @param device identifier
     * @param lot batch
     * @param serial number
     * @param expiry last day of use
     */
    public record Label(
            String issuer, String device, Optional<String> lot, Optional<String> serial, Optional<LocalDate> expiry) {

        /** Whether it tells one carton from its neighbours, and how long it keeps. */
        public boolean whole() {
            return expiry.isPresent() && (lot.isPresent() || serial.isPresent());
        }
    }

    @Operation(summary = "Reads a GS1 or HIBC label; nothing is written")
    @PostMapping
    public Label read(@RequestBody Scans scans) {
        return read(scans.scans(), clock);
    }

    /** The label, or a refusal that names what is wrong with the scans. */
    public static Label read(List<String> scans, Clock clock) {
        CartonLabel label = label(scans, clock);
        return new Label(
                label.issuer().name().toLowerCase(Locale.ROOT),
                label.device(),
                label.lot(),
                label.serial(),
                label.expiry());
    }

    /** The label, or a refusal that names what is wrong with the scan. */
    static CartonLabel label(List<String> scans, Clock clock) {
        return Refusal.unless(Scanned.label(scans, LocalDate.now(clock)));
    }
}

package org.lensward.lens.label;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/** Labels for tests, read on one day; check characters by another sum than the reader's. */
final class Labels {

    static final char GS = '\u001D';
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    static final Evidence SCANNED = new Evidence("Task/check-1", "1", "input");

    private static final LabelReader READER = new LabelReader(TODAY);
    private static final String HIBC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%";

    private Labels() {}

    static Outcome<CartonLabel> read(String... scans) {
        return READER.read(List.of(scans), SCANNED);
    }

    static CartonLabel label(String... scans) {
        Outcome<CartonLabel> outcome = read(scans);
        return outcome.value().orElseThrow(() -> new AssertionError(String.join(" | ", scans) + outcome.findings()));
    }

    static List<FindingCode> refusals(String... scans) {
        Outcome<CartonLabel> outcome = read(scans);
        if (outcome.value().isPresent()) {
            throw new AssertionError("was read: " + outcome);
        }
        return outcome.findings().stream().map(Finding::code).toList();
    }

    static String message(String... scans) {
        return read(scans).findings().get(0).message();
    }

    /** The same with the check digit of GS1 (General Specifications section 7.9.1): from the left, thirteen digits weigh 3, 1, 3 ... */
    static String gtin(String thirteenDigits) {
        int sum = 0;
        for (int i = 0; i < 13; i++) {
            sum += (thirteenDigits.charAt(i) - '0') * (i % 2 == 0 ? 3 : 1);
        }
        return thirteenDigits + (1000 - sum) % 10;
    }

    /** The same with the check character of HIBC (ANSI/HIBC 2.6 appendix B), summed one by one. */
    static String hibc(String text) {
        int sum = 0;
        for (char character : text.toCharArray()) {
            sum = (sum + HIBC.indexOf(character)) % 43;
        }
        return text + HIBC.charAt(sum);
    }

    static <T> Optional<T> some(T value) {
        return Optional.of(value);
    }
}

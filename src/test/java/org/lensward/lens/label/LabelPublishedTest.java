package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The standards' own examples, each file headed by its citation and never edited to go green. */
class LabelPublishedTest {

    @ParameterizedTest
    @CsvFileSource(resources = "/published/gs1-labels.csv", useHeadersInDisplayName = true)
    void gs1_examples(
            String scan,
            String device,
            @Nullable String lot,
            @Nullable String serial,
            @Nullable LocalDate expiry,
            @Nullable LocalDate production) {
        String scanned = scan.replace("<GS>", String.valueOf(Labels.GS));
        assertThat(Labels.label(scanned))
                .isEqualTo(new CartonLabel(
                        Issuer.GS1,
                        device,
                        Optional.ofNullable(lot),
                        Optional.ofNullable(serial),
                        Optional.ofNullable(expiry),
                        Optional.ofNullable(production),
                        Optional.empty(),
                        scanned));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/hibc-2-6.csv", useHeadersInDisplayName = true)
    void hibc_examples(
            String scan,
            String device,
            @Nullable String lot,
            @Nullable String serial,
            @Nullable LocalDate expiry,
            @Nullable LocalDate production,
            @Nullable Integer quantity) {
        assertThat(Labels.label(scan))
                .isEqualTo(new CartonLabel(
                        Issuer.HIBC,
                        device,
                        Optional.ofNullable(lot),
                        Optional.ofNullable(serial),
                        Optional.ofNullable(expiry),
                        Optional.ofNullable(production),
                        Optional.ofNullable(quantity),
                        scan));
    }

    /** Alone with a primary barcode, and behind it in one. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/hibc-2-6-secondary.csv", useHeadersInDisplayName = true)
    void every_secondary_format(
            String data,
            @Nullable String lot,
            @Nullable String serial,
            @Nullable LocalDate expiry,
            @Nullable Integer quantity) {
        CartonLabel two = Labels.label("+A123BJC5D6E71G", Labels.hibc("+" + data + "G"));
        CartonLabel one = Labels.label(Labels.hibc("+A123BJC5D6E71/" + data));
        assertThat(two)
                .usingRecursiveComparison()
                .ignoringFields("raw")
                .isEqualTo(one)
                .isEqualTo(new CartonLabel(
                        Issuer.HIBC,
                        "A123BJC5D6E71",
                        Optional.ofNullable(lot),
                        Optional.ofNullable(serial),
                        Optional.ofNullable(expiry),
                        Optional.empty(),
                        Optional.ofNullable(quantity),
                        ""));
    }

    /** ANSI/HIBC 2.6 sections 4.3.1 and 4.3.2 (restated): the two barcodes of one label, G linking them, D checking the second. */
    @Test
    void primary_and_secondary_barcode_make_one_label_in_either_order() {
        CartonLabel label = Labels.label("+A123BJC5D6E71G", "+$$52001510X3GD");
        assertThat(label.lot()).contains("10X3");
        assertThat(Labels.label("+$$52001510X3GD", "+A123BJC5D6E71G"))
                .usingRecursiveComparison()
                .ignoringFields("raw")
                .isEqualTo(label);
    }

    /**
     * A check character of blank; the caption prints it as underscore (HIBCC's glossary of terms, read). Worked by hand: 41 + 10 + 1 + 2 +
     * 3 + 20 + 4 = 81, which leaves 38, the blank.
     */
    @Test
    void a_check_character_of_blank_is_not_trimmed_away() {
        assertThat(Labels.label("+A123K4 ").device()).isEqualTo("A123K4");
        assertThat(Labels.label("*+A123K4_*\r\n").device()).isEqualTo("A123K4");
    }

    /** GS1's example of the check digit: 629104150021 gives 3. The same key in an EAN-13 symbol. */
    @Test
    void a_gtin_of_thirteen_digits_gets_a_leading_zero() {
        assertThat(Labels.label("]E06291041500213").device()).isEqualTo("06291041500213");
    }
}

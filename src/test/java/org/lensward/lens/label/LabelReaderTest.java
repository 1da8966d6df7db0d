package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.LABEL_AMBIGUOUS;
import static org.lensward.finding.FindingCode.LABEL_CHECK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_DATE_IMPOSSIBLE;
import static org.lensward.finding.FindingCode.LABEL_EMPTY;
import static org.lensward.finding.FindingCode.LABEL_LINK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_NOT_RECOGNISED;
import static org.lensward.finding.FindingCode.LABEL_OF_LARGER_BOX;
import static org.lensward.finding.FindingCode.LABEL_WITHOUT_DEVICE;
import static org.lensward.lens.label.Labels.GS;
import static org.lensward.lens.label.Labels.label;
import static org.lensward.lens.label.Labels.message;
import static org.lensward.lens.label.Labels.refusals;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.finding.Finding;
import org.lensward.finding.Severity;
import org.lensward.lens.stock.LensUnit;

/** What a person holding a scanner meets. The device identifiers are those of the standards' examples or made up. */
class LabelReaderTest {

    private static final String DEVICE = "0109501101530003";

    @Test
    void a_label_with_an_expiry_gives_the_identity_of_the_unit() {
        assertThat(label(DEVICE + "17281130" + "10AB-123" + GS + "21S7").identity())
                .contains(new LensUnit.Identity(
                        "09501101530003", Labels.some("AB-123"), Labels.some("S7"), LocalDate.of(2028, 11, 30)));
    }

    @Test
    void a_label_without_expiry_is_read_and_gives_none() {
        assertThat(label(DEVICE + "10AB-123").expiry()).isEmpty();
        assertThat(label(DEVICE + "10AB-123").identity()).isEmpty();
    }

    @Test
    void the_scans_are_kept_as_they_came() {
        assertThat(label("]C1" + DEVICE, "]C117281130\r").raw()).isEqualTo("]C1" + DEVICE + "\n]C117281130\r");
    }

    /** It comes from the bank's unit or a second reader. */
    @Test
    void a_label_has_no_place_for_a_power() {
        assertThat(Arrays.stream(CartonLabel.class.getRecordComponents()).map(part -> part.getName()))
                .containsExactlyInAnyOrder(
                        "issuer", "device", "lot", "serial", "expiry", "production", "quantity", "raw");
    }

    @Nested
    class nothing_of_use {

        @ParameterizedTest
        @ValueSource(strings = {"", "  ", "\r\n", "\u001D"})
        void an_empty_scan_is_refused(String scan) {
            assertThat(refusals(scan)).containsExactly(LABEL_EMPTY);
        }

        @Test
        void no_scan_at_all_is_refused() {
            assertThat(refusals()).containsExactly(LABEL_EMPTY);
        }

        /** A web address (GS1 Digital Link), tissue (ISBT 128), a plain DataMatrix or Code 128. */
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "https://id.example.org/01/09501101530003",
                    "LENS",
                    "=/A9999XYZ100T0944",
                    "]d10109501101530003",
                    "]C0LENS"
                })
        void another_kind_of_barcode_is_not_taken_for_a_label(String scan) {
            assertThat(refusals(scan)).containsExactly(LABEL_NOT_RECOGNISED);
        }

        /** ANSI/HIBC 1.3 section 2.1 (restated): a wristband's number stays out of the message. */
        @Test
        void a_hospitals_own_label_is_refused_without_being_quoted() {
            assertThat(refusals("+/ACMRN123456/V2009121908334")).containsExactly(LABEL_NOT_RECOGNISED);
            assertThat(message("+/ACMRN123456/V2009121908334")).doesNotContain("MRN", "123456");
            assertThat(message("1012345678")).doesNotContain("12345678");
        }

        @Test
        void lot_and_expiry_alone_name_no_device() {
            assertThat(refusals("1728113010AB")).containsExactly(LABEL_WITHOUT_DEVICE);
            assertThat(message("1728113010AB")).contains("expiry, lot");
            assertThat(message("240AB")).contains("nothing of use");
            assertThat(refusals("+$$52001510X3GD")).containsExactly(LABEL_WITHOUT_DEVICE);
        }

        @Test
        void a_larger_box_is_not_the_carton() {
            assertThat(refusals("(02)09501101530003(37)10")).containsExactly(LABEL_OF_LARGER_BOX);
            assertThat(refusals("(00)395011015300000011")).containsExactly(LABEL_OF_LARGER_BOX);
        }
    }

    @Nested
    class two_labels {

        @Test
        void two_devices_in_one_scan_are_refused() {
            assertThat(refusals(DEVICE + "0151022222233336")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(message(DEVICE + "0151022222233336")).contains("09501101530003 and 51022222233336");
        }

        @Test
        void one_device_with_two_serials_is_refused() {
            assertThat(refusals(DEVICE + "21A" + GS + DEVICE + "21B")).containsExactly(LABEL_AMBIGUOUS);
        }

        @Test
        void two_lines_in_one_scan_are_refused() {
            assertThat(refusals(DEVICE + "\n" + DEVICE)).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE + "\r" + DEVICE)).containsExactly(LABEL_AMBIGUOUS);
        }

        @Test
        void two_hibc_barcodes_that_ran_together_are_refused() {
            assertThat(refusals("+A123BJC5D6E71G+$$52001510X3GD")).containsExactly(LABEL_AMBIGUOUS);
        }

        @Test
        void scans_of_two_cartons_are_refused() {
            assertThat(refusals(DEVICE, "0151022222233336")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE + "10A", "10B")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE + "17281130", "17281129")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE + "11241130", "11241129")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE + "301", "302")).containsExactly(LABEL_AMBIGUOUS);
        }

        @Test
        void a_gs1_and_a_hibc_barcode_are_refused() {
            assertThat(refusals("+A123BJC5D6E71G", "17281130")).containsExactly(LABEL_AMBIGUOUS);
            assertThat(refusals(DEVICE, "+A123BJC5D6E71G")).contains(LABEL_AMBIGUOUS);
        }

        @Test
        void a_secondary_barcode_of_another_label_is_refused() {
            assertThat(refusals("+A123BJC5D6E71G", Labels.hibc("+$10X3H"))).containsExactly(LABEL_LINK_WRONG);
            assertThat(message("+A123BJC5D6E71G", Labels.hibc("+$10X3H"))).contains("links to H", "ends in G");
        }

        @Test
        void the_same_barcode_scanned_twice_is_one_label() {
            assertThat(label(DEVICE + "10A", DEVICE + "10A").lot()).contains("A");
        }

        @Test
        void two_barcodes_of_one_gs1_label_are_joined() {
            CartonLabel joined = label("]C11728113010AB" + GS + "21S", "]C1" + DEVICE);
            assertThat(joined.device()).isEqualTo("09501101530003");
            assertThat(joined.serial()).contains("S");
            assertThat(joined.expiry()).contains(LocalDate.of(2028, 11, 30));
        }
    }

    @Nested
    class dates {

        /** GS1 General Specifications section 3.4.7: day 00 is the last of the month. */
        @Test
        void day_00_is_the_last_of_the_month() {
            assertThat(label(DEVICE + "17280200").expiry()).contains(LocalDate.of(2028, 2, 29));
            assertThat(label(DEVICE + "17270200").expiry()).contains(LocalDate.of(2027, 2, 28));
            assertThat(label(DEVICE + "11241200").production()).contains(LocalDate.of(2024, 12, 31));
        }

        @ParameterizedTest
        @ValueSource(strings = {"281301", "280001", "280000", "280230", "270229", "281131", "280199"})
        void a_day_that_is_none_is_refused(String date) {
            assertThat(refusals(DEVICE + "17" + date)).containsExactly(LABEL_DATE_IMPOSSIBLE);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {"$$1305L", "$$2023005L", "$$3280230L", "$$428010124L", "$$527366L", "$$62700124L", "27366L"})
        void a_day_or_hour_that_is_none_is_refused_in_hibc(String data) {
            assertThat(refusals(Labels.hibc("+A123BJC5D6E71/" + data))).containsExactly(LABEL_DATE_IMPOSSIBLE);
        }

        @Test
        void a_full_date_that_is_none_is_refused_in_hibc() {
            assertThat(refusals(Labels.hibc("+A99912345/14D20280230"))).containsExactly(LABEL_DATE_IMPOSSIBLE);
            assertThat(refusals(Labels.hibc("+A99912345/16D20281301"))).containsExactly(LABEL_DATE_IMPOSSIBLE);
        }

        @Test
        void a_lens_cannot_expire_before_it_is_made() {
            assertThat(refusals(DEVICE + "11241130" + "17241129")).containsExactly(LABEL_DATE_IMPOSSIBLE);
            assertThat(label(DEVICE + "11241130" + "17241130").expiry()).isPresent();
        }

        /** GS1 General Specifications section 7.12 (value from memory): 49 years back to 50 ahead. */
        @Test
        void the_century_is_the_nearest() {
            assertThat(expiryRead(2026, "76")).isEqualTo(2076);
            assertThat(expiryRead(2026, "77")).isEqualTo(1977);
            assertThat(expiryRead(2099, "49")).isEqualTo(2149);
            assertThat(expiryRead(2099, "50")).isEqualTo(2050);
            assertThat(expiryRead(2050, "00")).isEqualTo(2100);
            assertThat(expiryRead(2050, "01")).isEqualTo(2001);
        }

        private int expiryRead(int year, String twoDigits) {
            return new LabelReader(LocalDate.of(year, 6, 1))
                    .read(DEVICE + "17" + twoDigits + "0101", Labels.SCANNED)
                    .value()
                    .flatMap(CartonLabel::expiry)
                    .orElseThrow()
                    .getYear();
        }
    }

    @Test
    void every_fault_is_told_at_once_and_forbids_the_lens() {
        List<Finding> findings =
                Labels.read("0109501101530004" + "17281301", "+A123BJC5D6E71H").findings();
        assertThat(findings.stream().map(Finding::code))
                .containsExactly(LABEL_CHECK_WRONG, LABEL_DATE_IMPOSSIBLE, LABEL_CHECK_WRONG);
        assertThat(findings)
                .allSatisfy(finding -> assertThat(finding.severity()).isEqualTo(Severity.WITHHOLDS));
    }
}

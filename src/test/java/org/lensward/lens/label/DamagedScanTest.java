package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.LABEL_CHECK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_GARBLED;
import static org.lensward.finding.FindingCode.LABEL_PART_UNKNOWN;
import static org.lensward.finding.FindingCode.LABEL_TRUNCATED;
import static org.lensward.lens.label.Labels.GS;
import static org.lensward.lens.label.Labels.label;
import static org.lensward.lens.label.Labels.message;
import static org.lensward.lens.label.Labels.refusals;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Scans as scanners, keyboards and people spoil them. */
class DamagedScanTest {

    private static final String DEVICE = "0109501101530003";

    @Nested
    class the_keyboard_layout {

        /** The digit row of a French keyboard: à & é " ' ( - è _ ç for 0 to 9. */
        @ParameterizedTest
        @CsvSource(
                quoteCharacter = '|',
                value = {
                    "à&àç(à&&à&(éààà\"",
                    "&è é(&&éà",
                    "_àà",
                    "\"à&",
                    "010950110&530003",
                    "\u0301",
                    "`A123BJC5D6E71G"
                })
        void a_french_or_german_digit_row_is_named_as_the_cause(String scan) {
            assertThat(refusals(scan)).containsExactly(LABEL_GARBLED);
            assertThat(message(scan)).contains("keyboard layout");
        }

        @Test
        void lower_case_in_hibc_is_laid_to_caps_lock() {
            assertThat(refusals("+a123bjc5d6e71g")).containsExactly(LABEL_GARBLED);
            assertThat(message("+a123bjc5d6e71g")).contains("character 2 is a", "caps lock");
        }

        @Test
        void any_other_stranger_is_named_with_its_place() {
            assertThat(refusals("01095011O1530003")).containsExactly(LABEL_GARBLED);
            assertThat(message("01095011O1530003")).contains("character 9 is O.");
            assertThat(message("010950110\u00021530003")).contains("character 10 is U+0002.");
            assertThat(message("0109501\uD83D01530003")).contains("character 8 is U+D83D; the scanner");
            assertThat(refusals("+A123BJC5D6E71~")).containsExactly(LABEL_GARBLED);
        }

        @Test
        void a_letter_where_an_identifier_is_due_is_garbled() {
            assertThat(refusals(DEVICE + "A")).containsExactly(LABEL_GARBLED);
            assertThat(refusals(DEVICE + "1A7281130")).containsExactly(LABEL_GARBLED);
        }
    }

    @Nested
    class a_scan_that_breaks_off {

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "]",
                    "]C1",
                    "0",
                    "01",
                    "010950110153000",
                    "01095011015300031",
                    "010950110153000317",
                    "01095011015300031728113",
                    "010950110153000310",
                    "010950110153000310\u001D1728",
                    "0109501\u001D17281130",
                    "01095011015300037\u001D",
                    "0109501101530003310",
                    "(01",
                    "(01)",
                    "(01)0950110153000",
                    "(01)09501101530003(",
                    "(01)09501101530003(17",
                    "(01)09501101530003(10)",
                    "+",
                    "+A1",
                    "*+A123BJC5D6E71G"
                })
        void is_seen_wherever_gs1_and_hibc_let_it_be_seen(String scan) {
            assertThat(refusals(scan)).containsExactly(LABEL_TRUNCATED);
        }

        /** GS1 knows no end of a lot: the bank's unit, whose lot is another, catches it. */
        @Test
        void is_not_seen_at_the_end_of_a_lot() {
            assertThat(label(DEVICE + "10AB").lot()).contains("AB");
        }
    }

    @Nested
    class separators {

        @ParameterizedTest
        @ValueSource(strings = {"\u001D", "<GS>", "{GS}", "[GS]", "<FNC1>", "{FNC1}", "^]", "\u241D"})
        void are_read_in_every_way_scanners_write_them(String separator) {
            CartonLabel label =
                    label(separator + DEVICE + "10AB" + separator + "21S7" + separator + "17281130" + separator);
            assertThat(label.lot()).contains("AB");
            assertThat(label.serial()).contains("S7");
            assertThat(label.expiry()).isPresent();
        }

        @Test
        void in_bracketed_text_are_layout_before_a_bracket_and_damage_elsewhere() {
            assertThat(label("(01)09501101530003(10)AB<GS>(21)S7{GS}").lot()).contains("AB");
            assertThat(refusals("(01)09501101530003(10)A<GS>B")).containsExactly(LABEL_GARBLED);
        }

        @Test
        void lost_ones_are_seen_once_a_value_grows_too_long() {
            assertThat(refusals(DEVICE + "10ABCDEFGHIJ" + DEVICE + "10ABC")).containsExactly(LABEL_GARBLED);
            assertThat(message(DEVICE + "10ABCDEFGHIJ" + DEVICE + "10ABC")).contains("(10)", "20", "separator is lost");
        }
    }

    @Nested
    class other_elements {

        @Test
        void that_gs1_defines_are_measured_and_left_aside() {
            CartonLabel label = label("(240)AB(01)09501101530003(20)07(3100)000012(7003)2811301200(91)x_y(10)A(30)1");
            assertThat(label.lot()).contains("A");
            assertThat(label.quantity()).contains(1);
            assertThat(label("2007" + DEVICE + "3100000012" + "240AB" + GS + "91x(y)" + GS + "10A")
                            .lot())
                    .contains("A");
        }

        @ParameterizedTest
        @ValueSource(strings = {"0312", "2900", "3106000012", "8888", "1410", "555"})
        void that_gs1_does_not_define_stop_the_reading(String next) {
            assertThat(refusals(DEVICE + next + "10AB")).containsExactly(LABEL_PART_UNKNOWN);
        }

        @ParameterizedTest
        @ValueSource(strings = {"6", "66"})
        void that_nothing_begins_with_stop_it_at_the_end(String rest) {
            assertThat(refusals(DEVICE + rest)).containsExactly(LABEL_PART_UNKNOWN);
            assertThat(message(DEVICE + rest)).contains(rest + ".. at character 17");
        }

        @Test
        void are_refused_in_brackets_likewise() {
            assertThat(refusals("(01)09501101530003(03)12")).containsExactly(LABEL_PART_UNKNOWN);
        }
    }

    @Nested
    class brackets {

        @Test
        void with_blanks_are_read() {
            assertThat(label(" (01) 0950 1101 5300 03 (17) 28 11 30 (10) AB-123 ")
                            .lot())
                    .contains("AB-123");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "(01)09501101530003(10)A(B",
                    "(01)09501101530003(10)A)B",
                    "(01)09501101530003(1)A",
                    "(01)095011015300031",
                    "(0109501101530003"
                })
        void inside_a_value_or_broken_are_refused(String typed) {
            assertThat(refusals(typed)).containsExactly(LABEL_GARBLED);
        }
    }

    @Nested
    class hibc {

        @Test
        void a_wrong_check_character_is_refused() {
            assertThat(refusals("+A123BJC5D6E71H")).containsExactly(LABEL_CHECK_WRONG);
            assertThat(refusals("+A123BJC5D6E71G+$$52001510X3GX")).containsExactly(LABEL_CHECK_WRONG);
        }

        /** Faults that table F1 and section 2.3.2 exclude, as general libraries' tests of refusal list them. */
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "A1231",
                    "A123BJC5D6E71234567890123",
                    "A123BJC5D6E7A",
                    "A123BJ.C5D6E71",
                    "1A23BJ5/$A",
                    "A99912345/",
                    "A99912345/$10X3/17D20111231",
                    "A99912345/$10X3/16D2011123",
                    "A99912345/$",
                    "A99912345/$$",
                    "A99912345/$$8052",
                    "A99912345/$$+9052713C001",
                    "A99912345/$$5ABCDE3C001",
                    "A99912345/$$+",
                    "A99912345/$$50527",
                    "A99912345/$$3231031ABCDEFGHIJKLMNOPQRS",
                    "A99912345/$$3231031ABC%",
                    "A99912345/Q1234567",
                    "A99912345/S",
                    "$$5052713C001+L",
                    "-A99912345"
                })
        void what_the_standard_does_not_define_is_refused(String body) {
            assertThat(refusals(Labels.hibc("+" + body))).contains(LABEL_PART_UNKNOWN);
        }

        @Test
        void data_without_a_lot_or_date_is_readable() {
            assertThat(label(Labels.hibc("+A99912345/$$7")).lot()).isEmpty();
            assertThat(label(Labels.hibc("+A99912345/$$+7")).serial()).isEmpty();
            assertThat(label(Labels.hibc("+A99912345/$$1128")).lot()).isEmpty();
        }

        @Test
        void a_scanner_that_names_the_symbol_is_understood() {
            assertThat(label("]A0+A123BJC5D6E71G").device()).isEqualTo("A123BJC5D6E71");
        }
    }
}

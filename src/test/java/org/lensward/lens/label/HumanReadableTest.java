package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** GS1 General Specifications, 4.14: identifiers in brackets, then the value; the separator is not printed. Value from memory. */
class HumanReadableTest {

    private static final char GS = 0x1D;

    @Test
    void a_scan_is_printed_with_its_identifiers_in_brackets() {
        assertThat(HumanReadable.of("]d20109521234000013172706301" + "0HB62706" + GS + "2170114"))
                .contains("(01)09521234000013(17)270630(10)HB62706(21)70114");
    }

    @Test
    void what_is_printed_already_stays() {
        String printed = "(01)09521234000013(17)270630(10)HB62706(21)70114";
        assertThat(HumanReadable.of(printed)).contains(printed);
    }

    @Test
    void two_barcodes_of_one_carton_stand_side_by_side_and_one_scanned_twice_stands_once() {
        assertThat(HumanReadable.of("]C10109521234000013\n]C11727063010HB62706\n]C10109521234000013"))
                .contains("(01)09521234000013 (17)270630(10)HB62706");
    }

    @Test
    void hibc_stands_as_it_is() {
        assertThat(HumanReadable.of("+A123BJC5D6E71G")).contains("+A123BJC5D6E71G");
    }

    @Test
    void what_is_no_label_has_no_printed_form() {
        assertThat(HumanReadable.of("hello")).isEmpty();
        assertThat(HumanReadable.of("")).isEmpty();
    }
}

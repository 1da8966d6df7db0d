package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/** What holds of every GS1 label, by the rules of GS1 General Specifications chapters 3 and 7. */
class LabelLaws {

    private static final DateTimeFormatter SIX_DIGITS = DateTimeFormatter.ofPattern("yyMMdd");

    /** A label as its maker meant it. */
    record Meant(String gtin, String lot, String serial, LocalDate expiry, int pieces) {

        /** Every element; a value without predefined length ends in a separator. */
        List<String> elements() {
            return new ArrayList<>(List.of(
                    "01" + gtin,
                    "10" + lot + Labels.GS,
                    "21" + serial + Labels.GS,
                    "17" + expiry.format(SIX_DIGITS),
                    "30" + pieces + Labels.GS));
        }

        String shuffled(long seed) {
            List<String> elements = elements();
            Collections.shuffle(elements, new Random(seed));
            return String.join("", elements).replaceAll(Labels.GS + "$", "");
        }

        CartonLabel label(String raw) {
            return new CartonLabel(
                    Issuer.GS1,
                    gtin,
                    Optional.of(lot),
                    Optional.of(serial),
                    Optional.of(expiry),
                    Optional.empty(),
                    Optional.of(pieces),
                    raw);
        }
    }

    @Provide
    Arbitrary<String> gtins() {
        return Arbitraries.strings().numeric().ofLength(13).map(Labels::gtin);
    }

    /** Of character set 82, less the sign that begins a separator some scanners write out. */
    private static Arbitrary<String> texts() {
        return Arbitraries.strings()
                .withChars("!\"%&'()*+,-./0123456789:;=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz")
                .ofMinLength(1)
                .ofMaxLength(20);
    }

    @Provide
    Arbitrary<Meant> labels() {
        Arbitrary<LocalDate> expiries = Arbitraries.longs()
                .between(
                        LocalDate.of(2000, 1, 1).toEpochDay(),
                        LocalDate.of(2075, 12, 31).toEpochDay())
                .map(LocalDate::ofEpochDay);
        Arbitrary<Integer> pieces = Arbitraries.integers().between(0, 99_999_999);
        return Combinators.combine(gtins(), texts(), texts(), expiries, pieces).as(Meant::new);
    }

    @Property
    void a_label_is_read_as_meant_in_any_order(@ForAll("labels") Meant meant, @ForAll long seed) {
        String scan = meant.shuffled(seed);
        assertThat(Labels.label(scan)).isEqualTo(meant.label(scan));
        assertThat(Labels.label("]d2" + scan)).isEqualTo(meant.label("]d2" + scan));
    }

    @Property
    void its_elements_make_the_same_label_in_scans_of_their_own(@ForAll("labels") Meant meant, @ForAll long seed) {
        List<String> scans = meant.elements();
        Collections.shuffle(scans, new Random(seed));
        assertThat(Labels.label(scans.toArray(String[]::new))).isEqualTo(meant.label(String.join("\n", scans)));
    }

    @Property
    void in_brackets_it_reads_the_same(@ForAll("labels") Meant meant) {
        String lot = meant.lot().replaceAll("[()]", "-");
        String typed = "(01)" + meant.gtin() + "(17)" + meant.expiry().format(SIX_DIGITS) + "(10)" + lot;
        CartonLabel label = Labels.label(typed);
        assertThat(label.device()).isEqualTo(meant.gtin());
        assertThat(label.lot()).contains(lot);
        assertThat(label.expiry()).contains(meant.expiry());
    }

    @Property
    void one_wrong_digit_in_the_device_is_seen(
            @ForAll("gtins") String gtin,
            @ForAll @IntRange(max = 13) int place,
            @ForAll @IntRange(min = 1, max = 9) int by) {
        char wrong = (char) ('0' + (gtin.charAt(place) - '0' + by) % 10);
        String scan = "01" + gtin.substring(0, place) + wrong + gtin.substring(place + 1);
        assertThat(Labels.refusals(scan)).containsExactly(FindingCode.LABEL_CHECK_WRONG);
    }

    /** Neighbours weigh 3 and 1: their exchange changes the sum by twice their difference, which is no multiple of ten unless they are five apart. */
    @Property
    void neighbours_exchanged_in_the_device_are_seen_unless_five_apart(
            @ForAll("gtins") String gtin, @ForAll @IntRange(max = 12) int place) {
        char left = gtin.charAt(place);
        char right = gtin.charAt(place + 1);
        Outcome<CartonLabel> outcome =
                Labels.read("01" + gtin.substring(0, place) + right + left + gtin.substring(place + 2));
        assertThat(outcome.value().isPresent()).isEqualTo(Math.abs(left - right) % 5 == 0);
    }

    /** Only the value that the scan breaks off in may be short, and only if GS1 gives it no fixed length. */
    @Property(tries = 300)
    void a_scan_that_breaks_off_says_nothing_wrong_but_a_shorter_last_value(
            @ForAll("labels") Meant meant, @ForAll long seed) {
        String scan = meant.shuffled(seed);
        for (int length = 0; length < scan.length(); length++) {
            String cut = scan.substring(0, length);
            Labels.read(cut).value().ifPresent(label -> {
                assertThat(label.device()).isEqualTo(meant.gtin());
                assertThat(label.expiry().orElse(meant.expiry())).isEqualTo(meant.expiry());
                long shorter = shorter(cut, label.lot(), meant.lot())
                        + shorter(cut, label.serial(), meant.serial())
                        + shorter(cut, label.quantity().map(String::valueOf), String.valueOf(meant.pieces()));
                assertThat(shorter).isLessThanOrEqualTo(1);
            });
        }
    }

    /** 1 for a value cut short at the scan's end, 0 for one that is whole or absent. */
    private static long shorter(String cut, Optional<String> read, String meant) {
        if (read.isEmpty() || read.get().equals(meant)) {
            return 0;
        }
        assertThat(meant).startsWith(read.get());
        assertThat(cut).endsWith(read.get());
        return 1;
    }

    @Property
    void two_labels_in_one_scan_are_refused(@ForAll("labels") Meant one, @ForAll("labels") Meant other) {
        if (!one.gtin().equals(other.gtin())) {
            String scan = String.join("", one.elements()) + String.join("", other.elements());
            assertThat(Labels.refusals(scan)).contains(FindingCode.LABEL_AMBIGUOUS);
            assertThat(Labels.refusals(one.shuffled(1), other.shuffled(2))).contains(FindingCode.LABEL_AMBIGUOUS);
        }
    }

    @Provide
    Arbitrary<String> rubbish() {
        Arbitrary<String> any = Arbitraries.strings().ofMaxLength(60);
        Arbitrary<String> near = Arbitraries.strings()
                .withChars("0123456789017+$/()]C1d2*S14DQ \u001D\r_àé^<GS>")
                .ofMaxLength(60);
        return Arbitraries.oneOf(any, near, near.map(text -> "+" + text), near.map(text -> "0109501101530003" + text));
    }

    @Property(tries = 10_000)
    void no_scan_whatever_makes_it_throw(@ForAll("rubbish") String scan, @ForAll("rubbish") String other) {
        assertThat(Labels.read(scan)).isNotNull();
        assertThat(Labels.read(scan, other)).isNotNull();
        assertThat(Labels.read(Labels.hibc("+" + scan.replaceAll("[^0-9A-Z. $/+%-]", ""))))
                .isNotNull();
    }
}

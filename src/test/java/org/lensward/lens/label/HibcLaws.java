package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.lensward.finding.FindingCode;

/** What holds of every HIBC label, by the rules of ANSI/HIBC 2.6 as general libraries restate them. */
class HibcLaws {

    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%";

    /** A label as its maker meant it. */
    record Meant(String device, String lot, String serial, LocalDate expiry) {

        String primary() {
            return Labels.hibc("+" + device);
        }

        String secondary() {
            char link = primary().charAt(primary().length() - 1);
            return Labels.hibc("+" + data() + link);
        }

        String inOne() {
            return Labels.hibc("+" + device + "/" + data());
        }

        private String data() {
            return "$$3" + expiry.format(DateTimeFormatter.ofPattern("yyMMdd")) + lot + "/S" + serial;
        }

        CartonLabel label(String raw) {
            return new CartonLabel(
                    Issuer.HIBC,
                    device,
                    Optional.of(lot),
                    Optional.of(serial),
                    Optional.of(expiry),
                    Optional.empty(),
                    Optional.empty(),
                    raw);
        }
    }

    @Provide
    Arbitrary<Meant> labels() {
        String capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        Arbitrary<String> devices = Combinators.combine(
                        Arbitraries.of(capitals.split("")),
                        text(4, 21),
                        Arbitraries.integers().between(0, 9))
                .as((first, rest, unit) -> first + rest + unit);
        Arbitrary<LocalDate> expiries = Arbitraries.longs()
                .between(
                        LocalDate.of(2000, 1, 1).toEpochDay(),
                        LocalDate.of(2075, 12, 31).toEpochDay())
                .map(LocalDate::ofEpochDay);
        return Combinators.combine(devices, text(1, 18), text(1, 18), expiries).as(Meant::new);
    }

    private static Arbitrary<String> text(int shortest, int longest) {
        return Arbitraries.strings()
                .withChars("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ")
                .ofMinLength(shortest)
                .ofMaxLength(longest);
    }

    @Property
    void a_label_is_read_as_meant_in_one_barcode_or_two(@ForAll("labels") Meant meant) {
        assertThat(Labels.label(meant.inOne())).isEqualTo(meant.label(meant.inOne()));
        assertThat(Labels.label(meant.secondary(), meant.primary()))
                .isEqualTo(meant.label(meant.secondary() + "\n" + meant.primary()));
    }

    @Property
    void one_wrong_character_anywhere_is_seen(
            @ForAll("labels") Meant meant, @ForAll @IntRange(max = 999) int at, @ForAll @IntRange(max = 42) int with) {
        for (String scan : List.of(meant.inOne(), meant.primary(), meant.secondary())) {
            int place = at % scan.length();
            String wrong = scan.substring(0, place) + ALPHABET.charAt(with) + scan.substring(place + 1);
            if (!wrong.equals(scan)) {
                assertThat(Labels.read(wrong, meant.primary()).value())
                        .as(wrong)
                        .isEmpty();
            }
        }
    }

    /** One in 43 shorter texts ends by chance in its own check character: no reader can tell that one from a label. */
    @Property(tries = 300)
    void a_scan_that_breaks_off_is_seen_unless_its_check_character_fits_by_chance(@ForAll("labels") Meant meant) {
        String scan = meant.inOne();
        for (int length = 0; length < scan.length(); length++) {
            String cut = scan.substring(0, length);
            boolean fits =
                    length > 1 && Labels.hibc(cut.substring(0, length - 1)).equals(cut);
            if (!fits) {
                assertThat(Labels.read(cut).value()).as(cut).isEmpty();
            }
        }
    }

    @Property
    void barcodes_of_two_labels_are_refused_when_their_check_characters_differ(
            @ForAll("labels") Meant one, @ForAll("labels") Meant other) {
        String check = one.primary().substring(one.primary().length() - 1);
        if (!other.primary().endsWith(check)) {
            assertThat(Labels.refusals(one.primary(), other.secondary())).containsExactly(FindingCode.LABEL_LINK_WRONG);
        }
    }

    @Property
    void two_barcodes_that_ran_together_are_refused(@ForAll("labels") Meant one, @ForAll("labels") Meant other) {
        assertThat(Labels.read(one.primary() + one.secondary()).value()).isEmpty();
        assertThat(Labels.read(one.inOne() + other.inOne()).value()).isEmpty();
    }
}

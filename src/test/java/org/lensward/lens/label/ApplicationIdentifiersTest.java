package org.lensward.lens.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import uk.org.okapibarcode.backend.OkapiInputException;
import uk.org.okapibarcode.util.Gs1;

/** The table against that of a general barcode library (OkapiBarcode 0.5.3), which checks what it draws. */
class ApplicationIdentifiersTest {

    static Stream<ApplicationIdentifier> all() {
        return Stream.of(
                        IntStream.range(0, 100).mapToObj(code -> String.format("%02d", code)),
                        codes(100, 999),
                        codes(1000, 9999))
                .flatMap(stream -> stream)
                .flatMap(code -> ApplicationIdentifiers.of(code).stream());
    }

    private static Stream<String> codes(int first, int last) {
        return IntStream.rangeClosed(first, last).mapToObj(Integer::toString);
    }

    @ParameterizedTest
    @MethodSource("all")
    void the_longest_value_is_drawn_and_one_longer_is_not(ApplicationIdentifier identifier) {
        String element = element(identifier);
        assertThat(Gs1.verify(element, "^")).startsWith(identifier.code());
        assertThatExceptionOfType(OkapiInputException.class).isThrownBy(() -> Gs1.verify(element + "1", "^"));
    }

    /** Countries are letters and a temperature may end in a minus; elsewhere ones will do. */
    private static String element(ApplicationIdentifier identifier) {
        String value =
                switch (identifier.code()) {
                    case "4307", "4317" -> "GB";
                    case "4330", "4331", "4332", "4333" -> "000001-";
                    default -> "1".repeat(identifier.longest());
                };
        return "[" + identifier.code() + "]" + value;
    }

    /** The library knows which lengths are predefined: it puts no separator behind those. */
    @ParameterizedTest
    @MethodSource("all")
    void a_counted_value_needs_no_separator(ApplicationIdentifier identifier) {
        String element = element(identifier);
        boolean separated = Gs1.verify(element + "[10]A", "^").contains("^");
        assertThat(identifier.counted()).isEqualTo(!separated);
    }

    /** General Specifications figure 7.8.5-2 (from memory): the first two digits settle that the length is predefined. */
    @Test
    void the_first_two_digits_settle_whether_a_value_is_counted() {
        List<String> predefined = List.of(
                "00", "01", "02", "11", "12", "13", "15", "16", "17", "20", "31", "32", "33", "34", "35", "36", "41");
        assertThat(all()).isNotEmpty().allSatisfy(identifier -> assertThat(identifier.counted())
                .as(identifier.toString())
                .isEqualTo(predefined.contains(identifier.code().substring(0, 2))));
    }

    @Test
    void no_identifier_begins_another() {
        List<String> codes = all().map(ApplicationIdentifier::code).toList();
        assertThat(codes).allSatisfy(code -> assertThat(codes.stream().filter(other -> other.startsWith(code)))
                .containsExactly(code));
    }

    /** Read in the GS1 Barcode Syntax Dictionary, 2023. */
    @ParameterizedTest
    @CsvSource({
        "253,13,30",
        "255,13,25",
        "421,4,12",
        "3913,4,18",
        "3943,4,4",
        "402,17,17",
        "7007,6,12",
        "7040,4,4",
        "8003,14,30",
        "8008,8,12"
    })
    void values_of_several_parts_are_as_long_as_these_together(String code, int shortest, int longest) {
        Optional<ApplicationIdentifier> identifier = ApplicationIdentifiers.of(code);
        assertThat(identifier.map(ApplicationIdentifier::shortest)).contains(shortest);
        assertThat(identifier.map(ApplicationIdentifier::longest)).contains(longest);
    }

    /** General Specifications section 7.11: character set 82 has 82 characters. */
    @Test
    void text_is_of_82_characters_and_numbers_of_ten() {
        assertThat(allowed(ApplicationIdentifier.Content.CHARACTERS)).isEqualTo(82);
        assertThat(allowed(ApplicationIdentifier.Content.DIGITS)).isEqualTo(10);
    }

    private static long allowed(ApplicationIdentifier.Content content) {
        return IntStream.rangeClosed(0, Character.MAX_VALUE)
                .filter(character -> content.allows((char) character))
                .count();
    }
}

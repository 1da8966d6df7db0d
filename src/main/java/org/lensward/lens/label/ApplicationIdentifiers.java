package org.lensward.lens.label;

import static org.lensward.lens.label.ApplicationIdentifier.Content.CHARACTERS;
import static org.lensward.lens.label.ApplicationIdentifier.Content.DIGITS;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The application identifiers of GS1, with the length of what follows each (GS1 Barcode Syntax Dictionary, 2023; General Specifications
 * section 3.2). An element that is not read must still be measured, or what follows it would be read from the wrong place.
 */
final class ApplicationIdentifiers {

    private static final Map<String, ApplicationIdentifier> ALL = new HashMap<>();

    private ApplicationIdentifiers() {}

    /** The identifier the text begins with at that place: no identifier is the beginning of another. */
    static Optional<ApplicationIdentifier> at(String text, int place) {
        return IntStream.rangeClosed(2, 4)
                .filter(length -> place + length <= text.length())
                .mapToObj(length -> text.substring(place, place + length))
                .flatMap(code -> of(code).stream())
                .findFirst();
    }

    /** What GS1 defines for these digits. */
    static Optional<ApplicationIdentifier> of(String code) {
        return Optional.ofNullable(ALL.get(code));
    }

    /** Whether these digits are an identifier, or could become one if more followed. */
    static boolean mayBegin(String digits) {
        return ALL.keySet().stream().anyMatch(code -> code.startsWith(digits));
    }

    static {
        identification();
        measures();
        parties();
        processes();
        coupons();
    }

    private static void identification() {
        counted(18, "00");
        counted(14, "01", "02");
        counted(6, "11", "12", "13", "15", "16", "17");
        counted(2, "20");
        text(1, 20, "10", "21", "22", "243", "254");
        text(1, 28, "235");
        text(1, 30, "240", "241", "250", "251");
        digits(1, 6, "242");
        text(13, 30, "253");
        digits(13, 25, "255");
        digits(1, 8, "30", "37");
    }

    /** The fourth digit counts decimals, none to five. */
    private static void measures() {
        for (int[] run : new int[][] {{310, 316}, {320, 337}, {340, 357}, {360, 369}}) {
            IntStream.rangeClosed(10 * run[0], 10 * run[1] + 9)
                    .filter(code -> code % 10 <= 5)
                    .forEach(code -> counted(6, Integer.toString(code)));
        }
        digits(1, 15, codes(3900, 3909));
        digits(4, 18, codes(3910, 3919));
        digits(1, 15, codes(3920, 3929));
        digits(4, 18, codes(3930, 3939));
        digits(4, 4, codes(3940, 3943));
        digits(6, 6, codes(3950, 3955));
    }

    private static void parties() {
        text(1, 30, "400", "401", "403");
        digits(17, 17, "402");
        counted(13, codes(410, 417));
        text(1, 20, "420", "4318");
        text(4, 12, "421");
        digits(3, 3, "422", "424", "426");
        digits(3, 15, "423", "425");
        text(1, 3, "427");
        text(1, 35, "4300", "4301", "4310", "4311", "4320");
        text(1, 70, codes(4302, 4306));
        text(2, 2, "4307", "4317");
        text(1, 30, "4308", "4319");
        digits(20, 20, "4309");
        text(1, 70, codes(4312, 4316));
        digits(1, 1, codes(4321, 4323));
        digits(10, 10, "4324", "4325");
        digits(6, 6, "4326");
        text(6, 7, codes(4330, 4333));
    }

    private static void processes() {
        digits(13, 13, "7001");
        text(1, 30, "7002", "7023");
        digits(10, 10, "7003");
        digits(1, 4, "7004");
        text(1, 12, "7005");
        digits(6, 6, "7006");
        digits(6, 12, "7007");
        text(1, 3, "7008");
        text(1, 10, "7009");
        text(1, 2, "7010");
        digits(6, 10, "7011");
        text(1, 20, "7020", "7021", "7022", "7240");
        text(4, 30, codes(7030, 7039));
        text(4, 4, "7040");
        text(1, 20, codes(710, 715));
        text(3, 30, codes(7230, 7239));
        digits(2, 2, "7241");
        text(1, 25, "7242");
    }

    private static void coupons() {
        digits(14, 14, "8001");
        text(1, 20, "8002", "8012");
        text(14, 30, "8003");
        text(1, 30, "8004", "8010", "90");
        digits(6, 6, "8005");
        digits(18, 18, "8006", "8017", "8018", "8026");
        text(1, 34, "8007");
        digits(8, 12, "8008");
        text(1, 50, "8009");
        digits(1, 12, "8011");
        text(1, 25, "8013", "8020");
        digits(1, 10, "8019");
        text(1, 90, "8030");
        text(1, 70, "8110", "8112", "8200");
        digits(4, 4, "8111");
        text(1, 90, codes(91, 99));
    }

    private static void counted(int length, String... codes) {
        put(code -> new ApplicationIdentifier(code, DIGITS, length, length, true), codes);
    }

    private static void digits(int shortest, int longest, String... codes) {
        put(code -> new ApplicationIdentifier(code, DIGITS, shortest, longest, false), codes);
    }

    private static void text(int shortest, int longest, String... codes) {
        put(code -> new ApplicationIdentifier(code, CHARACTERS, shortest, longest, false), codes);
    }

    private static void put(Function<String, ApplicationIdentifier> defined, String... codes) {
        for (String code : codes) {
            ALL.put(code, defined.apply(code));
        }
    }

    private static String[] codes(int first, int last) {
        return IntStream.rangeClosed(first, last).mapToObj(Integer::toString).toArray(String[]::new);
    }
}

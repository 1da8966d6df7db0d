package org.lensward.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds of every quantity. Source: the javadoc of each type and IEEE 754 (shortest decimal that reads back). */
class QuantityLaws {

    /**
     * One type under the laws.
     *
     * @param of its checked factory
     * @param parse the inverse of its toString
     * @param least exclusive or inclusive lower edge of what it is tried with
     * @param most upper edge of what it is tried with
     */
    record Kind(
            String name,
            DoubleFunction<? extends Quantity> of,
            Function<String, ? extends Quantity> parse,
            double least,
            double most) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final List<Kind> KINDS = List.of(
            new Kind("Millimetres", Millimetres::of, Millimetres::parse, -Double.MAX_VALUE, Double.MAX_VALUE),
            new Kind("Dioptres", Dioptres::of, Dioptres::parse, -Double.MAX_VALUE, Double.MAX_VALUE),
            new Kind("Degrees", Degrees::of, Degrees::parse, -Double.MAX_VALUE, Double.MAX_VALUE),
            new Kind("Days", value -> Days.of(Math.rint(value)), Days::parse, 0, 36_525),
            new Kind("Kilometres", Kilometres::of, Kilometres::parse, 0, Double.MAX_VALUE),
            new Kind("PureNumber", PureNumber::of, PureNumber::parse, -Double.MAX_VALUE, Double.MAX_VALUE),
            new Kind("Probability", Probability::of, Probability::parse, 0, 1),
            new Kind(
                    "RefractiveIndex",
                    RefractiveIndex::of,
                    RefractiveIndex::parse,
                    Math.nextUp(1.0),
                    Math.nextDown(2.0)),
            new Kind(
                    "MetresPerSecond",
                    MetresPerSecond::of,
                    MetresPerSecond::parse,
                    Double.MIN_VALUE,
                    Double.MAX_VALUE));

    @Provide
    Arbitrary<Kind> kinds() {
        return Arbitraries.of(KINDS);
    }

    /** Bit patterns, so that every exponent is as likely as any other. */
    @Provide
    Arbitrary<Double> finite() {
        return Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
    }

    @Property
    void what_is_printed_reads_back_as_the_same_quantity(@ForAll("kinds") Kind kind, @ForAll("finite") double any) {
        Quantity quantity = kind.of().apply(within(kind, any));
        assertThat(kind.parse().apply(quantity.toString())).isEqualTo(quantity);
    }

    @Property
    void the_unit_is_printed_after_the_number(@ForAll("kinds") Kind kind, @ForAll("finite") double any) {
        Quantity quantity = kind.of().apply(within(kind, any));
        assertThat(quantity.toString()).endsWith(" " + quantity.symbol());
    }

    @Property
    void a_number_with_the_unit_of_another_type_is_refused(
            @ForAll("kinds") Kind kind, @ForAll("kinds") Kind other, @ForAll("finite") double any) {
        Assume.that(kind != other);
        String foreign = other.of().apply(within(other, any)).toString();
        assertThatIllegalArgumentException().isThrownBy(() -> kind.parse().apply(foreign));
    }

    @Property
    void what_is_not_a_finite_number_is_refused(@ForAll("kinds") Kind kind, @ForAll("notFinite") double value) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> kind.of().apply(value))
                .withMessageContaining("finite");
    }

    @Provide
    Arbitrary<Double> notFinite() {
        return Arbitraries.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }

    @Property
    void dioptres_are_ordered_as_their_numbers(@ForAll("finite") double one, @ForAll("finite") double other) {
        assertThat(Dioptres.of(one).compareTo(Dioptres.of(other))).isEqualTo(Double.compare(one, other));
        assertThat(Millimetres.of(one).compareTo(Millimetres.of(other))).isEqualTo(Double.compare(one, other));
        assertThat(Degrees.of(one).compareTo(Degrees.of(other))).isEqualTo(Double.compare(one, other));
        assertThat(PureNumber.of(one).compareTo(PureNumber.of(other))).isEqualTo(Double.compare(one, other));
    }

    /** The number itself if the type can hold it, otherwise one folded into its range. */
    private static double within(Kind kind, double any) {
        if (any >= kind.least() && any <= kind.most()) {
            return any;
        }
        double fraction = Math.abs(Math.IEEEremainder(any, 1));
        return Math.min(kind.most(), kind.least() + fraction * (kind.most() - kind.least()));
    }
}

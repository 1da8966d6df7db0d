package org.lensward.outcome.constant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** A lens put where the position says leaves the refraction again: {@link ThinEye} knows nothing of this inverse. */
class LensPositionsLaws {

    private static ThinEye eye(double position, double length, double power) {
        return new ThinEye(Millimetres.of(position), Millimetres.of(length), Dioptres.of(power));
    }

    @Property
    void a_position_is_found_again(
            @ForAll @DoubleRange(min = 2, max = 8) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll @DoubleRange(min = 38, max = 48) double cornea,
            @ForAll @DoubleRange(min = 3, max = 34) double power) {
        ThinEye eye = eye(position, length, cornea);
        for (double sign : new double[] {1, -1}) {
            Dioptres lens = Dioptres.of(sign * power);
            double found = LensPositions.explaining(eye(5, length, cornea), lens, eye.refraction(lens))
                    .orElseThrow();
            assertThat(found).isCloseTo(position, within(1e-6));
        }
    }

    @Test
    void a_lens_without_power_may_lie_anywhere() {
        assertThat(LensPositions.explaining(eye(5, 23.5, 43), Dioptres.of(0), Dioptres.of(12)))
                .isEmpty();
    }

    @Test
    void some_refractions_no_position_explains() {
        assertThat(LensPositions.explaining(eye(5, 23.5, 43), Dioptres.of(10), Dioptres.of(20)))
                .isEmpty();
    }

    /** The polynomial through eight positions against the eye itself, at every tenth of a millimetre. */
    @Property
    void eight_positions_tell_all_others(
            @ForAll @DoubleRange(min = 3.5, max = 7) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll @DoubleRange(min = 0, max = 34) double power) {
        ThinEye eye = eye(position, length, 43);
        double[] values = new double[PositionNodes.COUNT];
        for (int node = 0; node < values.length; node++) {
            values[node] = refraction(eye, PositionNodes.node(node), power);
        }
        for (double by = -1; by <= 1; by += 0.1) {
            assertThat(PositionNodes.at(by, values)).isCloseTo(refraction(eye, by, power), within(1e-8));
        }
        assertThat(PositionNodes.at(PositionNodes.node(3), values)).isEqualTo(values[3]);
    }

    private static double refraction(ThinEye eye, double by, double power) {
        return eye.withLensMoved(Millimetres.of(by))
                .refraction(Dioptres.of(power))
                .value();
    }
}

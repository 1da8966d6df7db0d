package org.lensward.outcome;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import org.lensward.eye.Laterality;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * One refraction as it was written down.
 *
 * @param eye whose refraction it is
 * @param on the day
 * @param way how it was found
 * @param sphere as written
 * @param cylinder as written; empty where a sphere alone was recorded, which is not a cylinder of nought
 * @param vertexDistance from the back of the trial lens to the cornea, where it was recorded
 * @param acuity with this correction, where it was recorded
 */
public record Refraction(
        Laterality eye,
        LocalDate on,
        Way way,
        Dioptres sphere,
        Optional<Cylinder> cylinder,
        Optional<Millimetres> vertexDistance,
        Optional<Acuity> acuity) {

    /** How a refraction was found, best first. */
    public enum Way {
        /** With the person's answers. */
        SUBJECTIVE,
        /** By an instrument or a retinoscope alone. */
        OBJECTIVE;

        /** As the record carries it. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * The cylinder as written.
     *
     * @param power its size, nought or more
     * @param form the sign it was written with
     * @param axis 0 to 180 degrees, where it was recorded
     */
    public record Cylinder(Dioptres power, Form form, Optional<Degrees> axis) {
        public Cylinder {
            if (power.value() < 0) {
                throw new IllegalArgumentException("The size of a cylinder is nought or more, not " + power);
            }
        }

        /** A cylinder whose number carries its sign. */
        public static Cylinder signed(Dioptres power, Optional<Degrees> axis) {
            return new Cylinder(power.distanceTo(Dioptres.of(0)), power.value() < 0 ? Form.MINUS : Form.PLUS, axis);
        }
    }

    /** The sign with which a cylinder was written. */
    public enum Form {
        PLUS,
        MINUS,
        /** A number without a sign where the habit of the place is not known. */
        NOT_TOLD
    }
}

package org.lensward.optics.length;

import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_SOUND;

import java.util.List;
import java.util.Locale;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;

/**
 * What ultrasound passed through on its way to the retina: Hoffer, J Cataract Refract Surg 1994;20:554-562. A device multiplies the
 * time by one velocity; the true length follows from the reading at 1532 m/s, the velocity of aqueous and vitreous, plus what the
 * denser parts add.
 */
public sealed interface SoundPath {

    /** Aqueous and vitreous (Hoffer 1994). */
    MetresPerSecond AQUEOUS = MetresPerSecond.of(1532);

    /** The true length, from the reading the device would have shown at 1532 m/s. */
    Millimetres fromAqueousReading(Millimetres reading);

    /** As a sentence says it: "an eye with ...". */
    String words();

    /** The reading at another velocity: AL' = AL v'/v. */
    static Millimetres converted(Millimetres reading, MetresPerSecond from, MetresPerSecond to) {
        return Millimetres.of(reading.value() * to.value() / from.value());
    }

    /** The true length behind a device's reading, with the finding that says it was corrected. */
    default Outcome<Millimetres> trueLength(Measured<Millimetres> reading, MetresPerSecond assumed) {
        Millimetres corrected = fromAqueousReading(converted(reading.value(), assumed, AQUEOUS));
        Finding finding = Finding.of(
                LENGTH_CORRECTED_FOR_SOUND,
                reading.evidence(),
                reading.value().rounded(),
                String.format(Locale.ROOT, "%.0f m/s", assumed.value()),
                corrected.rounded(),
                words());
        return Outcome.ready(corrected, List.of(finding));
    }

    /**
     * The natural lens is in place: + 0.35 mm, from 5.25 mm of cornea, lens and wall at 1641 m/s. Hoffer lets the mean velocity fall
     * from 1561 m/s at 20 mm to 1549 m/s at 30 mm; a constant thickness reproduces 1555 m/s at 23.5 mm and the others within 2 m/s.
     */
    record NaturalLens() implements SoundPath {
        private static final double DENSER_PARTS = 0.35;

        @Override
        public Millimetres fromAqueousReading(Millimetres reading) {
            return Millimetres.of(reading.value() + DENSER_PARTS);
        }

        @Override
        public String words() {
            return "an eye with its natural lens";
        }
    }

    /** No lens: + 0.04 mm for the cornea and the wall. */
    record NoLens() implements SoundPath {
        private static final double CORNEA_AND_WALL = 0.04;

        @Override
        public Millimetres fromAqueousReading(Millimetres reading) {
            return Millimetres.of(reading.value() + CORNEA_AND_WALL);
        }

        @Override
        public String words() {
            return "an eye without a lens";
        }
    }

    /**
     * A lens implant: + 0.04 mm and the thickness times (1 - 1532 / v) of its material.
     *
     * @param material what sound passes through
     * @param thickness in the middle
     */
    record Implant(LensMaterial material, Millimetres thickness) implements SoundPath {
        @Override
        public Millimetres fromAqueousReading(Millimetres reading) {
            double share = material.addedShare().value();
            return Millimetres.of(new NoLens().fromAqueousReading(reading).value() + share * thickness.value());
        }

        @Override
        public String words() {
            return "an eye with a lens of " + material;
        }
    }

    /**
     * Silicone oil fills most of the vitreous cavity behind the natural lens: mean velocity 1139 m/s. Partial fillings differ and must be
     * calculated one by one; they are not modelled.
     */
    record OilBehindNaturalLens() implements SoundPath {
        private static final MetresPerSecond MEAN = MetresPerSecond.of(1139);

        @Override
        public Millimetres fromAqueousReading(Millimetres reading) {
            return converted(reading, AQUEOUS, MEAN);
        }

        @Override
        public String words() {
            return "an eye full of silicone oil behind its natural lens";
        }
    }

    /** Silicone oil fills most of an eye without a lens: mean velocity 1052 m/s. */
    record OilWithoutLens() implements SoundPath {
        private static final MetresPerSecond MEAN = MetresPerSecond.of(1052);

        @Override
        public Millimetres fromAqueousReading(Millimetres reading) {
            return converted(reading, AQUEOUS, MEAN);
        }

        @Override
        public String words() {
            return "an eye full of silicone oil without a lens";
        }
    }
}

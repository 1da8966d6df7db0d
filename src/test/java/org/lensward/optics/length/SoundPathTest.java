package org.lensward.optics.length;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_CONTACT;
import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_SOUND;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;

class SoundPathTest {

    @ParameterizedTest
    @CsvFileSource(resources = "/published/hoffer-1994.csv", useHeadersInDisplayName = true)
    void a_true_length_has_the_published_mean_velocity(String eye, double length, double velocity, double margin) {
        double reading = length * 1532 / velocity;
        double corrected = path(eye).fromAqueousReading(Millimetres.of(reading)).value();
        assertThat(corrected * 1532 / reading).isCloseTo(velocity, within(margin));
    }

    private static SoundPath path(String eye) {
        return switch (eye) {
            case "natural lens" -> new SoundPath.NaturalLens();
            case "no lens" -> new SoundPath.NoLens();
            case "oil with natural lens" -> new SoundPath.OilBehindNaturalLens();
            default -> new SoundPath.OilWithoutLens();
        };
    }

    /** Segment by segment, 1641 m/s in 5.25 mm of denser parts: the sound's time times 1532 m/s is the reading (Hoffer 1994). */
    @Test
    void the_phakic_constant_is_what_the_segments_add() {
        double reading = 1532 * (5.25 / 1641 + 18.25 / 1532);
        assertThat(new SoundPath.NaturalLens()
                        .fromAqueousReading(Millimetres.of(reading))
                        .value())
                .isCloseTo(23.5, within(0.005));
    }

    /** A known ratio for oil-filled eyes, true over apparent length: 0.71 (secondary source). */
    @Test
    void oil_makes_an_eye_look_longer_than_it_is() {
        double withLens = new SoundPath.OilBehindNaturalLens()
                .fromAqueousReading(Millimetres.of(30))
                .value();
        double without = new SoundPath.OilWithoutLens()
                .fromAqueousReading(Millimetres.of(30))
                .value();
        assertThat((withLens + without) / 2 / 30).isCloseTo(0.71, within(0.015));
    }

    /** + 0.04 + 44 %, - 56 % and + 75 % of the thickness (Hoffer 1994, abstract), by hand for 0.8 mm. */
    @ParameterizedTest
    @CsvSource({"PMMA, 23.392", "SILICONE, 22.592", "GLASS, 23.640"})
    void an_implant_adds_its_share(LensMaterial material, double length) {
        SoundPath path = new SoundPath.Implant(material, Millimetres.of(0.8));
        assertThat(path.fromAqueousReading(Millimetres.of(23)).value()).isCloseTo(length, within(1e-9));
    }

    @Test
    void a_corrected_length_says_so() {
        Measured<Millimetres> reading = new Measured<>(Millimetres.of(23.5), SOMEWHERE);
        var corrected = new SoundPath.NoLens().trueLength(reading, MetresPerSecond.of(1555));
        assertThat(corrected.value().orElseThrow().value()).isCloseTo(23.5 * 1532 / 1555 + 0.04, within(1e-9));
        assertThat(corrected.findings()).extracting(Finding::code).containsExactly(LENGTH_CORRECTED_FOR_SOUND);
        assertThat(corrected.findings().get(0).message())
                .contains("23.50 mm", "1555 m/s", "23.19 mm", "without a lens");
    }

    /** 0.20 mm shorter than immersion (secondary source). */
    @Test
    void a_contact_reading_is_lengthened_and_doubted() {
        var corrected = ContactUltrasound.corrected(new Measured<>(Millimetres.of(23), SOMEWHERE));
        assertThat(corrected.value().orElseThrow().value()).isCloseTo(23.20, within(1e-9));
        assertThat(corrected.findings()).extracting(Finding::code).containsExactly(LENGTH_CORRECTED_FOR_CONTACT);
    }

    @Test
    void every_path_has_words() {
        assertThat(new SoundPath.Implant(LensMaterial.PMMA, Millimetres.of(1)).words())
                .contains("PMMA");
        assertThat(new SoundPath.OilBehindNaturalLens().words()).contains("oil", "natural");
        assertThat(new SoundPath.OilWithoutLens().words()).contains("oil", "without");
        assertThat(new SoundPath.NaturalLens().words()).contains("natural");
    }
}

package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.record.site.SiteCodes;

/** A code map that could be misread is not read at all. */
class SiteCodesFileTest {

    private final Path folder;

    SiteCodesFileTest(@TempDir Path folder) {
        this.folder = folder;
    }

    private SiteCodes read(String yaml) throws IOException {
        return SiteCodesFile.read(Files.writeString(folder.resolve("site-codes.yaml"), yaml));
    }

    @ParameterizedTest
    @ValueSource(strings = {"north", "middle", "south"})
    void the_demos_maps_are_read(String hospital) {
        SiteCodes codes = SiteCodesFile.read(Path.of("demo-data/three-hospitals", hospital, "site-codes.yaml"));
        assertThat(codes.version()).isEqualTo(hospital + "-1");
        assertThat(codes.isEmpty()).isFalse();
    }

    @Test
    void a_section_that_is_not_there_is_empty() throws IOException {
        assertThat(read("version: x").isEmpty()).isTrue();
        assertThat(read("version: x\nidentifiers: [urn:a]").isEmpty()).isFalse();
        assertThat(read("version: x\nmethods: [{code: s|a, means: dicom|111750}]")
                        .isEmpty())
                .isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "codes: []; have a version",
                "version: ' '; have a version",
                "version: x\\ncolours: []; \"colours\"",
                "version: x\\ncodes: [{code: s|a, means: sign|glaucoma, side: right}]; \"side\"",
                "version: x\\neyes: [{code: s|a, means: sign|glaucoma}]; \"means\"",
                "version: x\\ncodes: []\\ncodes: []; Duplicate field 'codes'",
                "version: x\\ncodes: [{code: AL, means: sign|glaucoma}]; 'AL' is not system|code",
                "version: x\\ncodes: [{code: s|, means: sign|glaucoma}]; names no code",
                "version: x\\ncodes: [{means: sign|glaucoma}]; an entry has no code",
                "version: x\\ncodes: [{code: s|a}]; an entry has no means: s|a",
                "version: x\\ncodes: [{code: s|a, means: sign|glaucomma}]; 'sign|glaucomma' is no code that Lensward understands",
                "version: x\\ncodes: [{code: s|a, means: colour|red}]; 'colour|red' is no code",
                "version: x\\ncodes: [{code: s|a, means: sign|glaucoma, eye: upper}]; upper",
                "version: x\\ncodes: [{code: http://loinc.org|64742-0, means: measurement|lens-thickness}]; already means axial length",
                "version: x\\neyes: [{code: http://snomed.info/sct|1290032005, eye: left}]; already means right",
                "version: x\\neyes: [{code: s|a}]; an entry has no eye: s|a",
                "version: x\\nmethods: [{code: s|a, means: sign|glaucoma}]; means no biometry method but glaucoma",
                "version: x\\nunits: [{unit: D, ucum: '[diop]'}]; an entry has no kind: D",
                "version: x\\nunits: [{kind: power, ucum: '[diop]'}]; an entry has no unit",
                "version: x\\nunits: [{kind: power, unit: D}]; an entry has no ucum: D",
                "version: x\\nunits: [{kind: colour, unit: D, ucum: mm}]; colour",
                "version: x\\nunits: [{kind: power, unit: D, ucum: mm}]; 'mm' is no UCUM code of power",
                "version: x\\nunits: [{kind: length, unit: mm, ucum: um, factor: 1000}]; 'mm' is UCUM already",
                "version: x\\nunits: [{kind: power, unit: D, ucum: '[diop]', factor: 10}]; 'D' would change what a number in it means",
                "version: x\\nunits: [{kind: length, unit: X, ucum: mm, factor: 0}]; is not above 0",
                "version: x\\nunits: [{kind: length, unit: X, ucum: mm, factor: -1}]; is not above 0",
                "version: x\\nunits: [{kind: length, unit: '', ucum: mm}]; without a unit stays without one",
            })
    void what_is_unknown_contradictory_or_would_change_a_meaning_is_refused_by_name(String yaml, String because) {
        assertThatThrownBy(() -> read(yaml.replace("\\n", "\n")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("site-codes.yaml are refused")
                .hasMessageContaining(because);
    }

    @Test
    void a_file_that_is_not_there_is_named() {
        assertThatThrownBy(() -> SiteCodesFile.read(Path.of("no-such-map.yaml")))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("no-such-map.yaml");
    }

    @Test
    void an_adverse_pair_of_entries_is_read_and_left_to_be_found() throws IOException {
        assertThat(read("version: x\ncodes: [{code: s|a, means: sign|glaucoma}, {code: s|a, means: sign|uveitis}]")
                        .codes())
                .hasSize(2);
    }
}

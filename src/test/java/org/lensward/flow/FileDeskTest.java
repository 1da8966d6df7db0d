package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.record.Fhir;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;

/** Hostile names and contents, at the desk itself: what the file component would not hand over is refused all the same. */
class FileDeskTest {

    @TempDir
    private Path place;

    private Path folder;
    private FileDesk desk;

    @BeforeEach
    void open() throws IOException {
        folder = Files.createDirectory(place.resolve("in"));
        RecordClient nobody = RecordClient.at(URI.create("http://localhost:9/fhir"), Fhir.r4());
        desk = new FileDesk(
                Fhir.r4(),
                new Site(Map.of("HOSP", Ward.HOSPITAL), Map.of(), ZoneOffset.UTC),
                new FileSettings(folder.toString(), Duration.ZERO, 2_000_000),
                new IncomingStore(nobody));
    }

    @Test
    void a_file_outside_the_folder_is_not_read_by_whatever_name() throws IOException {
        Path secret = Files.writeString(place.resolve("secret.csv"), "result,patient\n");
        Path below = Files.createDirectory(folder.resolve("below"));
        Files.writeString(below.resolve("deep.csv"), "result,patient\n");
        Files.createSymbolicLink(folder.resolve("door"), place);
        Files.createSymbolicLink(folder.resolve("link.csv"), secret);
        for (String name : new String[] {
            folder + "/../secret.csv",
            secret.toString(),
            folder + "/below/deep.csv",
            folder + "/door/secret.csv",
            folder + "/link.csv"
        }) {
            assertThatThrownBy(() -> desk.read(name))
                    .as(name)
                    .isInstanceOf(RefusedInput.class)
                    .hasMessageNotContaining("secret");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"deep", "digits", "exponent", "cut"})
    void a_bomb_of_json_is_refused_before_it_is_built(String kind) throws IOException {
        String value =
                switch (kind) {
                    case "deep" -> "[".repeat(100_000) + "]".repeat(100_000);
                    case "digits" -> "9".repeat(500_000);
                    case "exponent" -> "1e999999999";
                    default -> "{";
                };
        String bundle =
                "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":{\"resourceType\":"
                        + "\"Observation\",\"id\":\"o\",\"status\":\"final\",\"code\":{\"text\":\"x\"},\"valueQuantity\":{\"value\":"
                        + value + "}}}]}";
        Path file = Files.write(folder.resolve("bomb.json"), bundle.getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> desk.read(file.toString()))
                .isInstanceOf(RefusedInput.class)
                .hasMessageContaining("nests deeper");
    }
}

package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lensward.record.AcceptedUnits;

/**
 * {@code fhir-profiles} by libraries of another language that share nothing with HAPI. Needs Node.js 20 and npm; where they are missing
 * it is skipped, except with {@code CI=true}, where that is an error.
 */
class InteropTest {

    private static final Path SCRIPTS = Path.of("src/test/interop/validate");
    private static final Path WORK = Path.of("target/interop/validate").toAbsolutePath();
    private static final boolean MUST_RUN = "true".equals(System.getenv("CI"));

    /** What a command said and how it ended. */
    private record Ran(int exit, String said) {}

    @Test
    void other_libraries_find_the_same() throws IOException, InterruptedException {
        need("Node.js is missing", run(Path.of("."), "node", "--version"));
        install();
        Path units = WORK.resolve("units.json");
        new ObjectMapper().writeValue(units.toFile(), AcceptedUnits.all());

        Ran checked = run(
                WORK,
                "node",
                "check.mjs",
                Path.of("fhir-profiles").toAbsolutePath().toString(),
                Path.of("src/test/resources/org/lensward/record/breaches.psv")
                        .toAbsolutePath()
                        .toString(),
                units.toString());

        assertThat(checked.exit()).as(checked.said()).isZero();
        assertThat(checked.said().strip()).matches("(?s).*\\n[1-9][0-9]{2,} passed, 0 failed");
    }

    /** The libraries of the lock file, unless they are there from an earlier run. */
    private static void install() throws IOException, InterruptedException {
        Files.createDirectories(WORK);
        Path installed = WORK.resolve("installed-lock.json");
        Path lock = SCRIPTS.resolve("package-lock.json");
        boolean current = Files.exists(installed) && Files.mismatch(installed, lock) == -1;
        try (Stream<Path> files = Files.list(SCRIPTS)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, WORK.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
        if (!current) {
            need(
                    "npm is missing or its registry away",
                    run(WORK, "npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--prefer-offline"));
            Files.copy(lock, installed, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void need(String otherwise, Ran ran) {
        if (MUST_RUN) {
            assertThat(ran.exit()).as(otherwise + ": " + ran.said()).isZero();
        }
        assumeTrue(ran.exit() == 0, otherwise);
    }

    private static Ran run(Path folder, String... command) throws IOException, InterruptedException {
        Path said = Files.createTempFile("interop", ".txt");
        try {
            Process process = new ProcessBuilder(List.of(command))
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .start();
            if (!process.waitFor(3, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                return new Ran(-1, command[0] + " took too long");
            }
            return new Ran(process.exitValue(), Files.readString(said));
        } catch (IOException absent) {
            return new Ran(-1, String.valueOf(absent.getMessage()));
        } finally {
            Files.delete(said);
        }
    }
}

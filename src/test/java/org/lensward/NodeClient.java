package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A client that is not ours, from npm, in a folder of {@code src/test/interop}. Its packages come with {@code npm ci} there; where they
 * are not there the test is left out, except with {@code CI=true}, where it fails.
 */
public final class NodeClient {

    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path folder;

    private NodeClient(Path folder) {
        this.folder = folder;
    }

    /** The client in that folder, which needs that package. */
    public static NodeClient in(String name, String needed) {
        Path folder = Path.of("src/test/interop", name);
        boolean here = Files.isDirectory(folder.resolve("node_modules").resolve(needed)) && node();
        if (!here && "true".equals(System.getenv("CI"))) {
            fail("Node and the packages of " + folder + " are wanted here: npm ci");
        }
        assumeTrue(here, "npm ci in " + folder);
        return new NodeClient(folder);
    }

    private static boolean node() {
        try {
            return new ProcessBuilder("node", "--version").start().waitFor() == 0;
        } catch (IOException absent) {
            return false;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError(interrupted);
        }
    }

    /** What the script printed: JSON, line by line. It is given the lines on its standard input. */
    public List<JsonNode> run(List<String> lines, String script, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("node", script));
        command.addAll(Arrays.asList(arguments));
        File errors = new File("target/" + folder.getFileName() + "-client.log");
        Process client = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectError(errors)
                .start();
        try (var in = client.outputWriter(StandardCharsets.UTF_8)) {
            for (String each : lines) {
                in.write(each + "\n");
            }
        }
        List<JsonNode> answers = new ArrayList<>();
        try (var out = client.inputReader(StandardCharsets.UTF_8)) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                answers.add(JSON.readTree(line));
            }
        }
        assertThat(client.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(client.exitValue())
                .as(answers + "\n" + Files.readString(errors.toPath()))
                .isZero();
        return answers;
    }
}

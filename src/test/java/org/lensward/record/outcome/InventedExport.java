package org.lensward.record.outcome;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** Invented eyes as a bulk export: a file for each kind of resource, so that what is of one eye lies far apart. */
public final class InventedExport {

    private InventedExport() {}

    /** Writes that many eyes; the files. */
    public static List<Path> write(Path folder, int eyes) throws IOException {
        List<Path> files = new ArrayList<>();
        files.add(file(folder, "Procedure", eyes, InventedLines::operations));
        files.add(file(folder, "Device", eyes, InventedLines::lens));
        files.add(file(folder, "Observation-biometry", eyes, InventedLines::biometry));
        files.add(file(folder, "Observation-predictions", eyes, InventedLines::predictions));
        files.add(file(folder, "Observation-refractions", eyes, InventedLines::refractions));
        files.add(file(folder, "Observation-openings", eyes, InventedLines::openings));
        files.add(file(folder, "DeviceRequest", eyes, each -> Stream.of(each.request())));
        files.add(file(folder, "RiskAssessment", eyes, each -> Stream.of(each.risk())));
        files.add(file(folder, "Provenance", eyes, InventedLines::trail));
        files.add(Files.write(folder.resolve("DeviceDefinition.ndjson"), InventedYear.models()));
        return files;
    }

    private static Path file(Path folder, String name, int eyes, Function<InventedLines, Stream<String>> lines)
            throws IOException {
        Path file = folder.resolve(name + ".ndjson");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int number = 0; number < eyes; number++) {
                InventedLines eye = new InventedLines(new InventedEye(number, 1), Fault.NONE);
                for (String line : (Iterable<String>) lines.apply(eye)::iterator) {
                    out.append(line).append('\n');
                }
            }
        }
        return file;
    }
}

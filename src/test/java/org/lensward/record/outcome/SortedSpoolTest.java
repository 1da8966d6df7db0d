package org.lensward.record.outcome;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Sorting on disk against sorting in memory by the Java library. */
class SortedSpoolTest {

    private static Map<String, List<String>> spooled(int longest, List<String[]> rows) throws IOException {
        Map<String, List<String>> seen = new TreeMap<>();
        List<String> keys = new ArrayList<>();
        try (SortedSpool spool = SortedSpool.open(longest)) {
            for (String[] row : rows) {
                spool.add(row[0], row[1]);
            }
            spool.forEachKey((key, of) -> {
                keys.add(key);
                seen.put(key, of);
            });
        }
        assertThat(keys).isSorted().doesNotHaveDuplicates();
        return seen;
    }

    private static List<String[]> dice(int count) {
        Random dice = new Random(3);
        return Stream.generate(() -> new String[] {"key" + dice.nextInt(97), "row\t" + dice.nextInt(1000) + "\u00e9"})
                .limit(count)
                .toList();
    }

    /** Runs of a few rows make more runs than are merged at once, so that merged runs are merged again. */
    @Test
    void rows_come_together_whatever_the_length_of_the_runs() throws IOException {
        List<String[]> rows = dice(5_000);
        Map<String, List<String>> expected = new TreeMap<>();
        rows.forEach(row ->
                expected.computeIfAbsent(row[0], any -> new ArrayList<>()).add(row[1]));
        expected.values().forEach(each -> each.sort(null));
        for (int longest : new int[] {1, 40, 1_000, 1_000_000}) {
            assertThat(spooled(longest, rows)).isEqualTo(expected);
        }
    }

    @Test
    void nothing_in_nothing_out() throws IOException {
        assertThat(spooled(10, List.of())).isEmpty();
    }

    @Test
    void nothing_stays_on_disk() throws IOException {
        long before = folders();
        spooled(40, dice(500));
        assertThat(folders()).isEqualTo(before);
    }

    private static long folders() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return all.filter(each -> each.getFileName().toString().startsWith("lensward-eyes-"))
                    .count();
        }
    }
}

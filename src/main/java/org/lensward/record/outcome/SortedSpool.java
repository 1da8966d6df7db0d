package org.lensward.record.outcome;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;

/**
 * Rows brought together by key, however far apart they came and however many they are: sorted runs on disk, merged when they are read.
 * In memory are at no time more than one run ({@link #RUN} characters), one line of each of at most {@link #FAN_IN} runs, and the rows of
 * one key. The runs lie in a folder of their own that only its owner can open, and go when the spool is closed.
 */
final class SortedSpool implements AutoCloseable {

    /** Characters of one run before it is sorted and written: at two bytes each some 32 MB. */
    static final int RUN = 16_000_000;

    /** Runs merged at once; where there are more, they are first merged into one. */
    static final int FAN_IN = 64;

    private static final Comparator<Row> ORDER = Comparator.comparing(Row::key).thenComparing(Row::row);

    private final Path folder;
    private final int longest;
    private final List<Row> buffer = new ArrayList<>();
    private final Deque<Path> runs = new ArrayDeque<>();
    private long buffered;
    private int written;

    private SortedSpool(Path folder, int longest) {
        this.folder = folder;
        this.longest = longest;
    }

    static SortedSpool open() throws IOException {
        return open(RUN);
    }

    /** A spool with runs of that many characters. */
    static SortedSpool open(int longest) throws IOException {
        return new SortedSpool(Files.createTempDirectory("lensward-eyes-"), longest);
    }

    /** Adds a row; neither part may hold a line break, the key no tab. */
    void add(String key, String row) throws IOException {
        buffer.add(new Row(key, row));
        buffered += key.length() + row.length();
        if (buffered >= longest) {
            spill();
        }
    }

    private void spill() throws IOException {
        buffer.sort(ORDER);
        write(buffer.iterator());
        buffer.clear();
        buffered = 0;
        if (runs.size() >= FAN_IN) {
            compact();
        }
    }

    private void write(Iterator<Row> rows) throws IOException {
        Path run = folder.resolve("run-" + written++);
        try (BufferedWriter out = Files.newBufferedWriter(run, StandardCharsets.UTF_8)) {
            while (rows.hasNext()) {
                Row next = rows.next();
                out.append(next.key()).append('\t').append(next.row()).append('\n');
            }
        }
        runs.add(run);
    }

    private void compact() throws IOException {
        List<Path> merged = List.copyOf(runs);
        runs.clear();
        try (Merge merge = new Merge(merged)) {
            write(merge);
        }
        for (Path run : merged) {
            Files.delete(run);
        }
    }

    /** Hands over all rows of each key, keys and rows in the order of their characters. */
    void forEachKey(Keyed taker) throws IOException {
        if (!buffer.isEmpty()) {
            spill();
        }
        try (Merge merge = new Merge(List.copyOf(runs))) {
            List<String> rows = new ArrayList<>();
            Optional<String> key = Optional.empty();
            while (merge.hasNext()) {
                Row next = merge.next();
                if (key.isPresent() && !key.get().equals(next.key())) {
                    taker.take(key.get(), List.copyOf(rows));
                    rows.clear();
                }
                key = Optional.of(next.key());
                rows.add(next.row());
            }
            if (key.isPresent()) {
                taker.take(key.get(), List.copyOf(rows));
            }
        }
    }

    @Override
    public void close() throws IOException {
        for (Path run : runs) {
            Files.deleteIfExists(run);
        }
        Files.deleteIfExists(folder);
    }

    /** Takes the rows of one key. */
    interface Keyed {
        void take(String key, List<String> rows) throws IOException;
    }

    private record Row(String key, String row) {}

    /** The smallest of what the runs have next. */
    private static final class Merge implements Iterator<Row>, AutoCloseable {

        private final PriorityQueue<Run> heads =
                new PriorityQueue<>(Comparator.comparing((Run run) -> run.head, ORDER));
        private final List<Run> open = new ArrayList<>();

        Merge(List<Path> runs) throws IOException {
            for (Path path : runs) {
                Run run = new Run(Files.newBufferedReader(path, StandardCharsets.UTF_8));
                open.add(run);
                heads.add(run);
            }
        }

        @Override
        public boolean hasNext() {
            return !heads.isEmpty();
        }

        @Override
        public Row next() {
            Run first = heads.remove();
            Row row = first.head;
            if (first.advance()) {
                heads.add(first);
            }
            return row;
        }

        @Override
        public void close() throws IOException {
            for (Run run : open) {
                run.reader.close();
            }
        }
    }

    private static final class Run {

        private final BufferedReader reader;
        private Row head = new Row("", "");

        Run(BufferedReader reader) {
            this.reader = reader;
            if (!advance()) {
                throw new IllegalStateException("A run of the spool is empty");
            }
        }

        boolean advance() {
            try {
                String line = reader.readLine();
                if (line == null) {
                    return false;
                }
                int tab = line.indexOf('\t');
                head = new Row(line.substring(0, tab), line.substring(tab + 1));
                return true;
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
    }
}

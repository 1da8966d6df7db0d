package org.lensward.record.outcome;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OperatedEyes;

/**
 * Operated eyes on disk, one a line, in parts that can each be gone through again and again. They lie in a folder that only its owner can
 * open and go when it is closed; persons are digests there, no names, no numbers.
 */
final class EyeRows implements OperatedEyes, AutoCloseable {

    /** One part for each core of a small server; more gain nothing there. */
    private static final int PARTS = 4;

    private static final JsonMapper ROWS = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .visibility(PropertyAccessor.ALL, Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, Visibility.ANY)
            .visibility(PropertyAccessor.CREATOR, Visibility.ANY)
            .serializationInclusion(JsonInclude.Include.NON_ABSENT)
            .build();

    private static final ObjectReader READER = ROWS.readerFor(OperatedEye.class);
    private static final ObjectWriter WRITER = ROWS.writerFor(OperatedEye.class);

    private final Path folder;
    private final List<Path> files = new ArrayList<>();
    private final List<BufferedWriter> writers = new ArrayList<>();
    private long persons;
    private long eyes;

    private EyeRows(Path folder) {
        this.folder = folder;
    }

    static EyeRows open() throws IOException {
        EyeRows rows = new EyeRows(Files.createTempDirectory("lensward-outcomes-"));
        for (int part = 0; part < PARTS; part++) {
            Path file = rows.folder.resolve("part-" + part);
            rows.files.add(file);
            rows.writers.add(Files.newBufferedWriter(file, StandardCharsets.UTF_8));
        }
        return rows;
    }

    /** The eyes of the next person; persons come in the order of their keys. */
    void write(List<OperatedEye> ofOnePerson) throws IOException {
        BufferedWriter part = writers.get((int) (persons++ % PARTS));
        for (OperatedEye eye : ofOnePerson) {
            eyes++;
            part.append(WRITER.writeValueAsString(eye)).append('\n');
        }
    }

    /** Nothing more is written. */
    void written() throws IOException {
        for (BufferedWriter writer : writers) {
            writer.close();
        }
    }

    long eyes() {
        return eyes;
    }

    @Override
    public int parts() {
        return PARTS;
    }

    @Override
    public Stream<OperatedEye> part(int index) {
        try {
            BufferedReader reader = Files.newBufferedReader(files.get(index), StandardCharsets.UTF_8);
            return reader.lines().map(EyeRows::eye).onClose(() -> close(reader));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static OperatedEye eye(String line) {
        try {
            return READER.readValue(line);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static void close(BufferedReader reader) {
        try {
            reader.close();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public void close() throws IOException {
        written();
        for (Path file : files) {
            Files.deleteIfExists(file);
        }
        Files.deleteIfExists(folder);
    }
}

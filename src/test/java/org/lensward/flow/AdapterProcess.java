package org.lensward.flow;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** An adapter in a process of its own, to be killed. Its settings come as {@code -D}. Argument: a file that is made once it works. */
final class AdapterProcess {

    private AdapterProcess() {}

    public static void main(String[] arguments) throws Exception {
        Adapter.start(Map.of());
        Files.createFile(Path.of(arguments[0]));
        Thread.currentThread().join();
    }
}

package org.lensward.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The adapter as a process of its own: how long until it looks at the record for the first time, and how much heap stays in use once it has
 * planned a thousand bookings in 256 MB. Arguments: copies of the theatre day (84), then flags for the JVM.
 */
public final class StartBench {

    private static final String FIRST_LOOK = "Watching the record from here";

    private StartBench() {}

    public static void main(String[] arguments) throws Exception {
        int copies = arguments.length == 0 ? 84 : Integer.parseInt(arguments[0]);
        List<String> flags =
                arguments.length < 2 ? List.of() : List.of(arguments).subList(1, arguments.length);
        ManyBookings bookings = new ManyBookings();
        try (RecordApart record = new RecordApart()) {
            bookings.load(record.client(), 0, copies);
            Path log = Files.createTempFile("lensward-bench", ".log");
            long start = System.nanoTime();
            Process adapter = adapter(record, log, flags);
            while (!Files.readString(log).contains(FIRST_LOOK)) {
                Thread.sleep(20);
            }
            System.out.printf("start to first look: %.2f s%n", (System.nanoTime() - start) / 1e9);
            record.awaitPlans(copies * bookings.inOneCopy());
            System.out.printf(
                    "%d bookings planned after %.0f s%n",
                    copies * bookings.inOneCopy(), (System.nanoTime() - start) / 1e9);
            jcmd(adapter, "GC.run");
            System.out.println(jcmd(adapter, "GC.heap_info"));
            adapter.destroy();
            adapter.waitFor(60, TimeUnit.SECONDS);
        }
        System.exit(0);
    }

    private static Process adapter(RecordApart record, Path log, List<String> flags) throws IOException {
        List<String> command = new ArrayList<>(List.of(java("java"), "-Xmx256m"));
        command.addAll(flags);
        command.addAll(List.of(
                "-Dlensward.record.url=" + record.url(),
                "-Dserver.port=0",
                "-Dspring.artemis.embedded.data-directory=" + Files.createTempDirectory("lensward-bench"),
                "-cp",
                System.getProperty("java.class.path"),
                "org.lensward.Lensward",
                "run"));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
    }

    private static String jcmd(Process adapter, String what) throws IOException, InterruptedException {
        Process asked = new ProcessBuilder(java("jcmd"), String.valueOf(adapter.pid()), what).start();
        String answer = new String(asked.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        asked.waitFor();
        return answer;
    }

    private static String java(String tool) {
        return Path.of(System.getProperty("java.home"), "bin", tool).toString();
    }
}

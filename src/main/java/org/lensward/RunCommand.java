package org.lensward;

import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.lensward.board.BoardConfiguration;
import org.lensward.flow.Adapter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Runs the adapter against the hospital's record until it is stopped. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = {
            "Runs the adapter against the record named by lensward.record.url until it is stopped.",
            "Exit 3: the record does not offer what is indispensable (see the setting lensward.ready)."
        })
final class RunCommand implements Callable<Integer> {

    private static final int NOT_READY = 3;

    @Option(names = "--dry-run", description = "write nothing to the record and report what would be written")
    private boolean dryRun;

    @Override
    public Integer call() throws Exception {
        // Nothing flows before the record was looked at.
        Map<String, Object> held = Map.of("camel.main.auto-startup", "false");
        Map<String, Object> heldAndDry = Map.of("camel.main.auto-startup", "false", "lensward.dry-run", "true");
        Adapter adapter = Adapter.serve(dryRun ? heldAndDry : held, BoardConfiguration.class);
        if (!adapter.mayWork()) {
            adapter.close();
            return NOT_READY;
        }
        adapter.work();
        new CountDownLatch(1).await();
        return 0;
    }
}

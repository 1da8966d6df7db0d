package org.lensward;

import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.lensward.board.BoardConfiguration;
import org.lensward.flow.Adapter;
import picocli.CommandLine.Command;

/** Runs the adapter against the hospital's record until it is stopped. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = "Runs the adapter against the record named by lensward.record.url until it is stopped.")
final class RunCommand implements Callable<Integer> {

    @Override
    public Integer call() throws InterruptedException {
        Adapter.serve(Map.of(), BoardConfiguration.class);
        new CountDownLatch(1).await();
        return 0;
    }
}

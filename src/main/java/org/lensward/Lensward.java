package org.lensward;

import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Lensward's commands. */
@Command(
        name = "lensward",
        mixinStandardHelpOptions = true,
        version = "Lensward 0.1.0",
        description = "Plans the lens, the risks and the lens check of every eye on a cataract list.",
        subcommands = {
            CheckCommand.class,
            CodesCommand.class,
            DayCommand.class,
            DemoCommand.class,
            OutcomesCommand.class,
            PlanCommand.class,
            ReadyCommand.class,
            ReplanCommand.class,
            RunCommand.class,
            SettingsCommand.class,
            StockCommand.class
        })
public final class Lensward {

    private Lensward() {}

    public static void main(String[] arguments) {
        System.exit(execute(arguments));
    }

    /** Runs one command; its exit code says how it went. */
    static int execute(String... arguments) {
        return new CommandLine(new Lensward())
                .setExecutionExceptionHandler((failure, command, parsed) -> fail(failure))
                .execute(arguments);
    }

    /** A person reads the cause, an operator the log. */
    private static int fail(Exception failure) {
        Throwable cause = failure;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        System.err.println("Stopped: " + cause.getClass().getSimpleName() + ": " + cause.getMessage());
        LoggerFactory.getLogger(Lensward.class).debug("Stopped", failure);
        return 1;
    }
}

package org.lensward;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Lensward's commands. */
@Command(
        name = "lensward",
        mixinStandardHelpOptions = true,
        version = "Lensward 0.1.0",
        description = "Plans the lens, the risks and the lens check of every eye on a cataract list.",
        subcommands = {DemoCommand.class, PlanCommand.class, RunCommand.class})
public final class Lensward {

    private Lensward() {}

    public static void main(String[] arguments) {
        System.exit(new CommandLine(new Lensward()).execute(arguments));
    }
}

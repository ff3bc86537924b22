package org.seamtally.cli;

import java.io.PrintWriter;

/** Carries out a command as the shell would, its output caught. */
public final class CommandRunner {

    private CommandRunner() {}

    /** @return the exit code */
    public static int run(PrintWriter out, String... arguments) {
        return Main.commands().setOut(out).execute(arguments);
    }
}

package org.seamtally.cli;

import java.io.Console;

/** Whether somebody looks on. */
final class Terminal {

    /**
     * Set by the launcher, who can ask whether the errors go to a terminal: {@code true} or {@code false}. Java itself can
     * but say whether it was started from one.
     */
    static final String PROPERTY = "seamtally.terminal";

    private Terminal() {}

    /** Whether what goes to the errors is seen on a terminal. */
    static boolean isThere() {
        String said = System.getProperty(PROPERTY);
        return said == null ? consoleIsTerminal(System.console()) : Boolean.parseBoolean(said);
    }

    private static boolean consoleIsTerminal(Console console) {
        if (console == null) {
            return false;
        }
        try {
            // from Java 22 on there is a console on a pipe too, and a method that tells
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException e) {
            return true;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a public method without arguments", e);
        }
    }
}

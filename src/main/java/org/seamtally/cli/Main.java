package org.seamtally.cli;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine;

/**
 * Where the program starts. {@code serve}, or no word at all, starts the service; any other command is carried out
 * without booting the framework: no server, no port, a quick start.
 */
@QuarkusMain
public final class Main {

    private Main() {}

    /** @param args the command and its options */
    public static void main(String[] args) {
        if (args.length == 0 || args.length == 1 && args[0].equals("serve")) {
            // before the first connection of any kind: it is read once
            System.setProperty(ChannelInitializerExtension.EXTENSIONS_SYSTEM_PROPERTY, "serviceload");
            Quarkus.run();
            return;
        }
        // libraries speak to whoever runs a service: a command tells its faults itself
        Logger.getLogger("").setLevel(Level.WARNING);
        System.exit(commands().execute(args));
    }

    /** The commands, ready to be carried out. */
    static CommandLine commands() {
        return new CommandLine(new Seamtally())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setUsageHelpAutoWidth(true);
    }
}

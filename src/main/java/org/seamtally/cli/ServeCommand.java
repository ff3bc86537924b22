package org.seamtally.cli;

import io.quarkus.runtime.Quarkus;
import picocli.CommandLine.Command;

/** Named here for the help text: {@link Main} starts the service before it reads any other command. */
@Command(name = "serve", description = "Starts the service on 127.0.0.1, port 8080.", mixinStandardHelpOptions = true)
final class ServeCommand implements Runnable {

    @Override
    public void run() {
        Quarkus.run();
    }
}

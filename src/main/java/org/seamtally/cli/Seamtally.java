package org.seamtally.cli;

import picocli.CommandLine.Command;

/** The commands. */
@Command(
        name = "seamtally",
        description = "Quotes the TIG welding of tube frames.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = {
            EstimateCommand.class,
            CompareCommand.class,
            ReviewCommand.class,
            BatchCommand.class,
            BackupCommand.class,
            ServeCommand.class
        })
final class Seamtally {}

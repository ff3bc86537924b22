package org.seamtally.cli;

import org.seamtally.catalogue.Catalogue;
import org.seamtally.wire.ProgramVersion;
import picocli.CommandLine.IVersionProvider;

/** What {@code --version} prints. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        return new String[] {"seamtally " + ProgramVersion.text() + ", catalogue " + Catalogue.version()};
    }
}

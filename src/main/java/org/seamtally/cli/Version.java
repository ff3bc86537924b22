package org.seamtally.cli;

import org.seamtally.wire.Engine;
import org.seamtally.wire.EngineAnswer;
import org.seamtally.wire.ProgramVersion;
import picocli.CommandLine.IVersionProvider;

/** What {@code --version} prints. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        EngineAnswer engine = new Engine(ProgramVersion.text()).identity();
        return new String[] {"seamtally " + engine.version() + ", catalogue " + engine.catalogue()};
    }
}

package org.seamtally.api;

import io.quarkus.runtime.configuration.ConfigurationException;
import jakarta.inject.Singleton;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Who can reach the service, and whether it may start like that. */
@Singleton
public class Reach {

    private final AccessSettings access;
    private final String host;

    Reach(AccessSettings access, @ConfigProperty(name = "quarkus.http.host") String host) {
        this.access = access;
        this.host = host;
    }

    /**
     * Who may come in, in a line.
     *
     * @throws ConfigurationException where others can reach the service and nobody would be asked who he is
     */
    String checked() {
        if (access.isOn()) {
            return "Whoever asks needs a token for " + access.audience() + "; the page is "
                    + (access.hasLogIn() ? "for whoever logs in." : "off: nobody can log in.");
        }
        if (!isThisMachine(host)) {
            throw new ConfigurationException("quarkus.http.host is " + host
                    + ", where others can reach the service, and nothing says who may come in. Set"
                    + " seamtally.access.public-key or seamtally.access.provider, or stay on 127.0.0.1.");
        }
        return "Open to this machine alone: whoever is on it may ask, and nobody else.";
    }

    /** Whether an address can be reached from this machine alone; one that is not known is taken for another. */
    static boolean isThisMachine(String host) {
        try {
            return Arrays.stream(InetAddress.getAllByName(host)).allMatch(InetAddress::isLoopbackAddress);
        } catch (UnknownHostException e) {
            return false;
        }
    }
}

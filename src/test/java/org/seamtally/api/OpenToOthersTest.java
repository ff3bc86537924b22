package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.quarkus.test.junit.main.LaunchResult;
import io.quarkus.test.junit.main.QuarkusMainLauncher;
import io.quarkus.test.junit.main.QuarkusMainTest;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where others could reach the service and nobody would be asked who he is, it does not start. */
@QuarkusMainTest
@TestProfile(OpenToOthersTest.Everywhere.class)
class OpenToOthersTest {

    public static final class Everywhere implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("quarkus.http.host", "0.0.0.0");
        }
    }

    @Test
    void itSaysWhyAndEndsWithACode(QuarkusMainLauncher launcher) {
        LaunchResult result = launcher.launch("serve");
        String said = result.getOutput() + result.getErrorOutput();
        assertEquals(1, result.exitCode(), said);
        assertTrue(said.contains("quarkus.http.host is 0.0.0.0"), said);
        assertTrue(said.contains("seamtally.access.public-key"), said);
        assertFalse(said.contains("Listening on"), said);
        assertFalse(said.contains("\tat "), said);
    }

    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "127.0.0.2", "localhost", "::1", "[::1]"})
    void addressesOfThisMachineAlone(String host) {
        assertTrue(Reach.isThisMachine(host));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "::", "192.168.0.10", "10.0.0.1", "no.such.host.invalid"})
    void addressesThatOthersReach(String host) {
        assertFalse(Reach.isThisMachine(host));
    }
}

package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PublishedNozzleFlowTest {

    private final NozzleFlow argon = new NozzleFlow(Rig.ARGON);

    @ParameterizedTest
    @CsvSource({
        // isentropic flow over choked flow, argon, computed from Saint-Venant and Wantzel's formula
        "0.6, 0.9743",
        "0.7, 0.9065",
        "0.8, 0.7870",
        "0.9, 0.5872",
        "0.95, 0.4255"
    })
    void passesTheIsentropicShareOfTheChokedFlow(double ratio, double share) {
        assertEquals(share, argon.at(ratio).value() / Rig.ARGON.criticalFlowFactor(), 5e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.6, 0.7, 0.8, 0.9, 0.95})
    void staysJustBelowTheEllipseOfIso6358(double ratio) {
        // ISO 6358-1:2013, from memory: √(1 − ((r − b)/(1 − b))²); known to be up to 1.2 % above the isentropic law
        double b = 0.4871;
        double ellipse = Math.sqrt(1 - Math.pow((ratio - b) / (1 - b), 2));
        double share = argon.at(ratio).value() / Rig.ARGON.criticalFlowFactor();
        assertTrue(share <= ellipse * (1 + 1e-9) && share >= ellipse * 0.987, share + " against " + ellipse);
    }

    @ParameterizedTest
    @CsvSource({
        // orifice in, gauge psi, ft³/h at 70 °F: choked argon, C_d 1, computed
        "0.020, 25, 12.50",
        "0.025, 25, 19.53",
        "0.025, 50, 31.83",
        "0.032, 50, 52.15"
    })
    void chokedOrificesPassWhatTheyShould(double inches, double gauge, double flow) {
        double diameter = inches * Rig.INCH;
        Restriction orifice = new Restriction(Math.PI / 4 * diameter * diameter, Rig.ARGON, Rig.F70);
        double mass =
                orifice.at(Rig.ATMOSPHERE + gauge * Rig.PSI, Rig.ATMOSPHERE).massFlow();
        double volume = mass / new ReferenceState(Rig.F70).density(Rig.ARGON) / Rig.CUBIC_FOOT_PER_HOUR;
        // 0.1 %: that figure takes the real gas's density, which is 0.07 % above the ideal one
        assertEquals(flow, volume, 1e-3 * flow);
    }

    @Test
    void isChokedAtAndBelowTheCriticalRatioOnly() {
        double critical = Rig.ARGON.criticalPressureRatio();
        assertEquals(Rig.ARGON.criticalFlowFactor(), argon.at(critical).value(), 0);
        assertEquals(0, argon.at(critical).slope(), 0);
        assertEquals(Rig.ARGON.criticalFlowFactor(), argon.at(0).value(), 0);
        assertTrue(argon.at(critical + 1e-3).value() < Rig.ARGON.criticalFlowFactor());
        assertTrue(argon.at(critical + 1e-3).slope() < 0);
    }

    @Test
    void isStraightAbove0999AndBackwardsAboveOne() {
        double edge = argon.at(0.999).value();
        assertEquals(edge / 2, argon.at(0.9995).value(), 1e-12);
        assertEquals(0, argon.at(1).value(), 0);
        assertEquals(-edge / 2, argon.at(1.0005).value(), 1e-12);
        assertEquals(-edge / 0.001, argon.at(1).slope(), 1e-9);
        assertEquals(edge, argon.at(0.999 + 1e-12).value(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.49, 0.55, 0.7, 0.9, 0.99, 0.9989, 0.9995})
    void slopesAreThoseOfTheCurve(double ratio) {
        double step = 1e-6;
        double difference =
                (argon.at(ratio + step).value() - argon.at(ratio - step).value()) / (2 * step);
        assertEquals(difference, argon.at(ratio).slope(), 1e-4 * Math.max(1, Math.abs(difference)));
        Restriction restriction = new Restriction(1e-6, Rig.ARGON, Rig.F70);
        double up = 3e5;
        Restriction.Flow flow = restriction.at(up, ratio * up);
        double h = 0.1;
        double byUp = (restriction.at(up + h, ratio * up).massFlow()
                        - restriction.at(up - h, ratio * up).massFlow())
                / (2 * h);
        double byDown = (restriction.at(up, ratio * up + h).massFlow()
                        - restriction.at(up, ratio * up - h).massFlow())
                / (2 * h);
        assertEquals(byUp, flow.byUpstream(), 1e-4 * Math.abs(byUp));
        assertEquals(byDown, flow.byDownstream(), 1e-4 * Math.abs(byDown) + 1e-18);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.4871, 0.4872, 0.6, 0.9, 0.9985, 0.99899, 0.99901, 0.9995})
    void sizedForAFlowItPassesItAndNeedsThatPressure(double ratio) {
        double up = 4e5;
        Restriction restriction = Restriction.passing(2e-4, up, ratio * up, Rig.ARGON, 300);
        assertEquals(2e-4, restriction.at(up, ratio * up).massFlow(), 1e-16);
        assertEquals(up, restriction.upstreamFor(2e-4, ratio * up), 1e-6);
    }

    @Test
    void noFlowNeedsNoPressure() {
        assertEquals(1e5, new Restriction(1e-6, Rig.ARGON, 300).upstreamFor(0, 1e5), 1e-6);
    }

    @Test
    void refusesAFlowUphillAndANegativeArea() {
        for (double down : new double[] {2e5, 3e5}) {
            String message = assertThrows(
                            IllegalArgumentException.class, () -> Restriction.passing(1e-4, 2e5, down, Rig.ARGON, 300))
                    .getMessage();
            assertTrue(message.startsWith("nothing flows from 200000.0 Pa into "), message);
        }
        assertThrows(IllegalArgumentException.class, () -> new Restriction(-1e-9, Rig.ARGON, 300));
    }
}

package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PublishedHoseFlowTest {

    private static final double DENSITY = new ReferenceState(Rig.F70).density(Rig.ARGON);

    private static double mass(double cubicFeetPerHour) {
        return cubicFeetPerHour * Rig.CUBIC_FOOT_PER_HOUR * DENSITY;
    }

    @ParameterizedTest
    @CsvSource({
        // argon at 70 °F, computed with 22.377 µPa·s: ft³/h, bore mm, Re
        "15, 6.35, 1750",
        "20, 6.35, 2334",
        "20, 4.76, 3112"
    })
    void reynoldsNumbersOfUsualHoses(double flow, double millimetres, double reynolds) {
        GasProperties argon = new GasProperties(Rig.ARGON.gasConstant(), 5.0 / 3, 22.377e-6);
        // 0.1 %: that figure takes the real gas's density
        assertEquals(
                reynolds,
                new HoseFriction(millimetres * 1e-3, argon, Rig.F70).reynolds(mass(flow)),
                1e-3 * reynolds + 0.5);
    }

    @Test
    void laminarDropIsThatOfHagenAndPoiseuille() {
        // argon 70 °F, 15 ft³/h, 6.35 mm × 5 m at 1 atm: 330.5 Pa as a gas, 330.8 Pa as a liquid (closed forms,
        // computed with 22.377 µPa·s)
        GasProperties argon = new GasProperties(Rig.ARGON.gasConstant(), 5.0 / 3, 22.377e-6);
        double gradient = new HoseFriction(6.35e-3, argon, Rig.F70).gradientFor(mass(15));
        double inlet = Math.sqrt(Rig.ATMOSPHERE * Rig.ATMOSPHERE + gradient * 5);
        assertEquals(330.5, inlet - Rig.ATMOSPHERE, 0.3);
        // p1² − p2² = 256·µ·L·R·T·ṁ/(π·d⁴)
        double closed =
                256 * argon.viscosity() * argon.gasConstant() * Rig.F70 * mass(15) / (Math.PI * Math.pow(6.35e-3, 4));
        assertEquals(closed, gradient, 1e-12 * closed);
    }

    @ParameterizedTest
    @ValueSource(doubles = {4000, 6000, 1e4, 3e4, 1e5})
    void turbulentFrictionIsThatOfSmoothPipe(double reynolds) {
        // Prandtl and von Kármán for smooth pipe, from memory: 1/√f = 2·log10(Re·√f) − 0.8; Blasius is within 3 %
        double smooth = new BrentSolver(1e-12)
                .solve(100, f -> 1 / Math.sqrt(f) - 2 * Math.log10(reynolds * Math.sqrt(f)) + 0.8, 0.005, 0.1);
        assertEquals(smooth, darcyFriction(reynolds), 0.03 * smooth);
        assertEquals(0.3164 * Math.pow(reynolds, -0.25), darcyFriction(reynolds), 1e-14);
    }

    @ParameterizedTest
    @CsvSource({
        // Crane TP-410 (2009), problem 7-9, laminar oil: Re 1675.6, f = 0.038195
        "1675.6, 0.038195",
        "2300, 0.027826"
    })
    void laminarFrictionIs64OverRe(double reynolds, double friction) {
        assertEquals(friction, darcyFriction(reynolds), 1e-6);
    }

    /** Darcy's f, taken out of the gradient that a flow needs: f = Δ(p²)/Δx·d·A²/(ṁ²·R·T). */
    private static double darcyFriction(double reynolds) {
        double bore = 5e-3;
        double flow = reynolds * Math.PI * bore * Rig.ARGON.viscosity() / 4;
        double area = Math.PI * bore * bore / 4;
        double gradient = new HoseFriction(bore, Rig.ARGON, Rig.F70).gradientFor(flow);
        return gradient * bore * area * area / (flow * flow * Rig.ARGON.gasConstant() * Rig.F70);
    }

    /** Isothermal flow with the gas's inertia in it: ṁ² = A²·ρ·(p₁² − p₂²)/(p₁·(f·L/D + 2·ln(p₁/p₂))), ρ at the inlet. */
    private static double isothermal(double density, double f, double p1, double p2, double length, double bore) {
        double area = Math.PI * bore * bore / 4;
        return area * Math.sqrt(density * (p1 * p1 - p2 * p2) / (p1 * (f * length / bore + 2 * Math.log(p1 / p2))));
    }

    @Test
    void theGassInertiaDoesNotMatterInAHose() {
        // the formula as the open-source library fluids (C. Bell) has it, with its example's printed answer
        assertEquals(145.4847572636, isothermal(11.3, 0.00185, 1e6, 9e5, 1000, 0.5), 1e-9);
        // the usual hose at its first instant, the worst there is: 74.4 ft³/h, 50 psi
        double flow = mass(74.4);
        double bore = 0.25 * Rig.INCH;
        double length = 25 * Rig.FOOT;
        double p1 = Rig.ATMOSPHERE + 50 * Rig.PSI;
        HoseFriction friction = new HoseFriction(bore, Rig.ARGON, Rig.F70);
        double p2 = Math.sqrt(p1 * p1 - friction.gradientFor(flow) * length);
        double f = 0.3164 * Math.pow(friction.reynolds(flow), -0.25);
        double withInertia = isothermal(p1 / (Rig.ARGON.gasConstant() * Rig.F70), f, p1, p2, length, bore);
        assertEquals(flow, withInertia, 1e-3 * flow);
        assertTrue(withInertia < flow);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1000, 2299, 2300, 2301, 3000, 3999, 4000, 4001, 50000})
    void flowAndGradientAreEachOthersInverse(double reynolds) {
        HoseFriction friction = new HoseFriction(4e-3, Rig.ARGON, Rig.F70);
        double flow = reynolds * Math.PI * 4e-3 * Rig.ARGON.viscosity() / 4;
        double gradient = friction.gradientFor(flow);
        Rate rate = friction.at(gradient);
        assertEquals(flow, rate.value(), 1e-13 * flow);
        assertEquals(-flow, friction.at(-gradient).value(), 1e-13 * flow);
        assertEquals(rate.slope(), friction.at(-gradient).slope(), 0);
        double step = 1e-5 * gradient;
        double above = (friction.at(gradient + step).value() - flow) / step;
        double below = (flow - friction.at(gradient - step).value()) / step;
        // at the two kinks the slope is one side's or the other's
        assertEquals(0, Math.min(Math.abs(rate.slope() - above), Math.abs(rate.slope() - below)), 1e-4 * above);
        assertTrue(above > 0 && below > 0);
    }

    @Test
    void aHoseAtRestHasNoFlowAndAFiniteSlope() {
        Rate rest = new HoseFriction(4e-3, Rig.ARGON, Rig.F70).at(0);
        assertEquals(0, rest.value(), 0);
        assertTrue(rest.slope() > 0 && Double.isFinite(rest.slope()));
    }
}

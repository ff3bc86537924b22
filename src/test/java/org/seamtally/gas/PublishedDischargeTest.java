package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A hose as one cell, discharged with the meter shut, against closed forms. */
class PublishedDischargeTest {

    private static final double T = 293.15;
    private static final double RT = Rig.ARGON.gasConstant() * T;

    /** 1 m³ as a hose, so that τ is 1 over the conductance. */
    private static final Hose TANK = new Hose(Math.sqrt(4 / Math.PI), 1);

    private static double pressureAfter(double time, double start, double volume, Outlet outlet) {
        return course(time, start, volume, outlet).pressures()[0];
    }

    private static Course course(double time, double start, double volume, Outlet outlet) {
        Hose hose = new Hose(TANK.insideDiameter(), volume);
        HoseLine line = new HoseLine(
                hose,
                new double[] {0},
                new double[] {volume},
                new HoseFriction(hose.insideDiameter(), Rig.ARGON, T),
                start,
                new Restriction(0, Rig.ARGON, T),
                RT);
        double mass = start * volume / RT;
        return Course.follow(line, outlet, new double[] {start}, 0, new Course.Scale(start, mass, mass, 1e-9), time);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 1, 2, 4})
    void chokedIsothermalDischargeIsExponential(double share) {
        // p = p0·e^(−t/τ), τ = V/(C_d·A·C*·√(RT))
        double area = 1e-6;
        double volume = 2.4e-4;
        double tau = volume / (area * Rig.ARGON.criticalFlowFactor() * Math.sqrt(RT));
        Restriction nozzle = new Restriction(area, Rig.ARGON, T);
        Outlet outlet = p -> {
            Restriction.Flow flow = nozzle.at(p, 0);
            return new Rate(flow.massFlow(), flow.byUpstream());
        };
        double start = 5e5;
        double expected = start * Math.exp(-share);
        Course course = course(share * tau, start, volume, outlet);
        assertEquals(expected, course.pressures()[0], 1e-7 * start);
        assertEquals((start - expected) * volume / RT, course.outflow(), 1e-7 * start * volume / RT);
        assertEquals(0, course.inflow(), 0);
        assertEquals(share * tau, course.end(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        // ISO 6358 discharge with b = 0.5, from 5 to 1 bar, τ = 1 s: closed form, computed; time, pressure
        "0.5, 3.032653",
        "0.916291, 2.000000",
        "1.5, 1.173298",
        "1.8, 1.013524"
    })
    void isothermalDischargeByIso6358IsItsClosedForm(double time, double pressure) {
        double air = 1e5;
        double b = 0.5;
        double perPressure = 1 / RT;
        Outlet outlet = p -> {
            double r = air / p;
            if (r <= b) {
                return new Rate(perPressure * p, perPressure);
            }
            double x = (r - b) / (1 - b);
            double root = Math.sqrt(1 - x * x);
            return new Rate(perPressure * p * root, perPressure * (root + x * r / ((1 - b) * root)));
        };
        assertEquals(pressure * 1e5, pressureAfter(time, 5e5, 1, outlet), 0.2);
    }

    /** An argon hose of 0.2413 L through 0.64 mm, 4.5 bar into 1 atm, at 20 °C. */
    private static final double AREA = Math.PI / 4 * 0.64e-3 * 0.64e-3;

    private static final double VOLUME = 0.2413e-3;

    private static Outlet intoAir() {
        return new TorchEnd(java.util.Optional.empty(), new Restriction(AREA, Rig.ARGON, T));
    }

    @ParameterizedTest
    @CsvSource({
        // computed by quadrature: seconds isothermal, seconds adiabatic, bar
        "1.69551, 1.05969, 3.0",
        "3.22701, 2.09362, 2.08",
        "4.62552, 3.10588, 1.5",
        "6.32803, 4.42226, 1.1"
    })
    void anArgonHoseEmptiesInItsTime(double isothermal, double adiabatic, double bar) {
        assertEquals(bar * 1e5, pressureAfter(isothermal, 4.5e5, VOLUME, intoAir()), 3);
        // adiabatic discharge cools the gas: its pressure falls faster, a bound
        assertTrue(pressureAfter(adiabatic, 4.5e5, VOLUME, intoAir()) > bar * 1e5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.6, 1})
    void theAdiabaticClosedFormIsABound(double share) {
        // choked: p/p0 = (1 + (γ−1)·t/(2τ))^(2γ/(1−γ)); A. Farrell, vessel blowdown of ideal gases (derivation)
        double tau = VOLUME / (AREA * Rig.ARGON.criticalFlowFactor() * Math.sqrt(RT));
        assertEquals(4.18164, tau, 2e-5);
        double adiabatic = 4.5e5 * Math.pow(1 + share / 3, -5);
        double isothermal = pressureAfter(share * tau / 2, 4.5e5, VOLUME, intoAir());
        assertTrue(isothermal > 4.5e5 * Math.pow(1 + share / 2 / 3, -5));
        assertEquals(4.5e5 * Math.exp(-share / 2), isothermal, 0.1);
        assertTrue(adiabatic < pressureAfter(share * tau, 4.5e5, VOLUME, intoAir()));
    }

    @Test
    void aGeneralSolverAgreesOnTheLumpedStart() {
        // Hipparchus, Dormand and Prince 8(5,3); the hose as one cell, meter and torch line by the same laws
        SetUp setUp = Rig.with(rig -> rig.bore = 0.25 * Rig.INCH);
        double rt = setUp.gas().gasConstant() * setUp.gasTemperature();
        double flow = setUp.massFlow();
        double air = Rig.ATMOSPHERE;
        double torch = air + setUp.torchBackPressure();
        double supply = setUp.supplyPressure();
        Restriction torchLine = Restriction.passing(flow, torch, air, setUp.gas(), Rig.F70);
        Restriction meter = Restriction.passing(flow, supply, torch, setUp.gas(), Rig.F70);
        StartTransient lumped = StartTransient.of(setUp, Resolution.LUMPED);
        double perMass = rt / setUp.hose().volume();
        OrdinaryDifferentialEquation balance = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double in = meter.at(supply, y[0]).massFlow();
                double out = torchLine.at(y[0], air).massFlow();
                return new double[] {(in - out) * perMass, (out - flow) / setUp.referenceDensity()};
            }
        };
        double whole = lumped.netSurge();
        for (double time : new double[] {0.05, 0.3, 1, 3, 10}) {
            double reference = new DormandPrince853Integrator(1e-12, 1, 1e-11, 1e-11)
                    .integrate(balance, new ODEState(0, new double[] {supply, 0}), time)
                    .getPrimaryState()[1];
            assertEquals(reference, lumped.netSurge(time), 1e-5 * whole, "after " + time + " s");
        }
        assertTrue(lumped.lumped());
    }
}

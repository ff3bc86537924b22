package org.seamtally.preheat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.seam.Member;

/** Heat given off and run away from a hot zone. */
class PublishedHeatLossTest {

    private static final double ROOM = 293.15;

    /** Stefan and Boltzmann, emissivity 0.8, surroundings at 20 °C: W/m² by radiation alone. */
    @ParameterizedTest(name = "{0} °C: {1} W/m²")
    @CsvSource({"100, 544.5, 6.81", "150, 1119.4, 8.61", "200, 1938.5, 10.77", "300, 4560.2, 16.29"})
    void radiationOfOxidisedSteel(double celsius, double flux, double transfer) {
        double rise = celsius - 20;
        double radiated = HeatLoss.flux(celsius + 273.15, ROOM) - HeatLoss.STILL_AIR * rise;
        assertEquals(flux, radiated, 0.051);
        assertEquals(transfer, radiated / rise, 5.1e-3);
    }

    /** Still air at a constant 10 W/(m² K), a decision of this project: it carries 1300 W/m² off at 150 °C. */
    @Test
    void airCarriesItsShareOff() {
        assertEquals(1119.4 + 1300, HeatLoss.flux(423.15, ROOM), 0.051);
        assertEquals(0, HeatLoss.flux(ROOM, ROOM));
    }

    /** π · 25 mm · 75 mm of tube, π (25 − 2) 2 mm² of steel. */
    @Test
    void aTubesZoneReachesFromItsFootprintOutwards() {
        HeatedZone branch = HeatedZone.of(new Member.Tube(25e-3, 2e-3, 0, 1), 75e-3);
        assertEquals(Math.PI * 23e-3 * 2e-3 * 75e-3, branch.steelVolume(), 1e-18);
        assertEquals(Math.PI * 25e-3 * 75e-3, branch.surface(), 1e-15);
        assertEquals(Math.PI * 25e-3, branch.finPerimeter(), 1e-15);
        assertEquals(Math.PI * 23e-3 * 2e-3, branch.finArea(), 1e-17);
        assertEquals(1, branch.waysOut());
        HeatedZone main = HeatedZone.of(new Member.Tube(25e-3, 2e-3, 50e-3, 2), 75e-3);
        assertEquals(Math.PI * 23e-3 * 2e-3 * 200e-3, main.steelVolume(), 1e-18);
        assertEquals(Math.PI * 25e-3 * 200e-3, main.surface(), 1e-15);
        assertEquals(2, main.waysOut());
    }

    /** A disc of 75 + 20 mm, both faces in the air; half of one at an edge. */
    @Test
    void aPlatesZoneIsADiscOrHalfOfOne() {
        HeatedZone disc = HeatedZone.of(new Member.Plate(5e-3, 40e-3, false), 75e-3);
        double face = Math.PI * 95e-3 * 95e-3;
        double rim = 2 * Math.PI * 95e-3;
        assertEquals(face * 5e-3, disc.steelVolume(), 1e-18);
        assertEquals(2 * face, disc.surface(), 1e-15);
        assertEquals(2 * rim, disc.finPerimeter(), 1e-15);
        assertEquals(rim * 5e-3, disc.finArea(), 1e-17);
        assertEquals(1, disc.waysOut());
        HeatedZone half = HeatedZone.of(new Member.Plate(5e-3, 40e-3, true), 75e-3);
        assertEquals(disc.steelVolume() / 2, half.steelVolume(), 1e-18);
        assertEquals(disc.surface() / 2, half.surface(), 1e-15);
        assertEquals(disc.finPerimeter() / 2, half.finPerimeter(), 1e-15);
        assertEquals(disc.finArea() / 2, half.finArea(), 1e-17);
        assertEquals(1, half.waysOut());
        assertEquals(disc.losses(423.15, ROOM) / 2, half.losses(423.15, ROOM), 1e-10);
    }

    /**
     * Heat that runs out along a tube, against the fin's differential equation k A T'' = h P (T − T_a), integrated
     * numerically over a length that counts as endless; the slope at the hot end is shot for.
     */
    @ParameterizedTest(name = "{0} mm × {1} mm at {2} °C")
    @CsvSource({"25.4, 1.65, 100", "38.1, 2.41, 150", "50.8, 6.35, 300"})
    void heatRunsOutAsTheFinsEquationHasIt(double diameter, double wall, double celsius) {
        Member.Tube tube = new Member.Tube(diameter * 1e-3, wall * 1e-3, 0, 1);
        double hot = celsius + 273.15;
        HeatedZone zone = HeatedZone.of(tube, 75e-3);
        double flux = HeatLoss.flux(hot, ROOM);
        double expected = finHeat(tube, hot - ROOM, flux / (hot - ROOM));
        assertEquals(expected, zone.losses(hot, ROOM) - zone.surface() * flux, 1e-5 * expected);
        // a tube that runs through has two ways out and, of the same zone, twice the surface
        HeatedZone through = HeatedZone.of(new Member.Tube(diameter * 1e-3, wall * 1e-3, 0, 2), 75e-3);
        assertEquals(2 * zone.losses(hot, ROOM), through.losses(hot, ROOM), 1e-10);
    }

    private static double finHeat(Member.Tube tube, double rise, double transfer) {
        // W/(m K), a decision of this project
        double conductivity = 40;
        double perimeter = Math.PI * tube.outsideDiameter();
        double inside = tube.outsideDiameter() - 2 * tube.wall();
        double area = Math.PI / 4 * (tube.outsideDiameter() * tube.outsideDiameter() - inside * inside);
        double square = transfer * perimeter / (conductivity * area);
        double length = 8 / Math.sqrt(square);
        OrdinaryDifferentialEquation fin = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double x, double[] y) {
                return new double[] {y[1], square * y[0]};
            }
        };
        UnivariateFunction endSlope = slope -> new DormandPrince853Integrator(1e-6, length, 1e-10, 1e-12)
                .integrate(fin, new ODEState(0, new double[] {rise, slope}), length)
                .getPrimaryState()[1];
        double slope = new BracketingNthOrderBrentSolver(1e-12, 5).solve(200, endSlope, -1e6, 0);
        return -conductivity * area * slope;
    }

    @Test
    void nothingIsLostAtOrBelowTheAmbientsTemperature() {
        HeatedZone zone = HeatedZone.of(new Member.Tube(25e-3, 2e-3, 0, 1), 75e-3);
        assertEquals(0, zone.losses(ROOM, ROOM));
        assertEquals(0, zone.losses(ROOM - 1, ROOM));
        assertTrue(zone.losses(ROOM + 0.001, ROOM) > 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 350, 420, 600, 860})
    void lossesGrowWithTheTemperature(double kelvin) {
        HeatedZone zone = HeatedZone.of(new Member.Plate(5e-3, 40e-3, false), 75e-3);
        assertTrue(zone.losses(kelvin + 1, ROOM) > zone.losses(kelvin, ROOM));
        assertTrue(zone.losses(kelvin, ROOM - 1) > zone.losses(kelvin, ROOM));
    }
}

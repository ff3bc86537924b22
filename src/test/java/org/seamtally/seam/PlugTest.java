package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlugTest extends JointContract {

    @Override
    Plug joint(Draw draw) {
        SplittableRandom random = draw.random();
        return new Plug(
                random.nextDouble(3e-3, 20e-3) * draw.scale(),
                random.nextDouble(1e-3, 8e-3) * draw.scale() * draw.deposit());
    }

    @Override
    Joint.Practice usual() {
        return new Joint.Practice(0, 1);
    }

    @Override
    boolean plug() {
        return true;
    }

    /** A disc: π/4 d² t; 10 mm through 3 mm is 235.619 mm³. */
    @Test
    void aPlugIsADisc() {
        Seam seam = new Plug(10e-3, 3e-3).seam();
        assertEquals(235.619e-9, seam.depositVolume(), 5.1e-13);
        assertEquals(0, seam.length());
        assertEquals(0, seam.meanSection());
    }

    @Test
    void aPlugHeatsThePlateAroundIt() {
        Plug plug = new Plug(10e-3, 3e-3);
        assertEquals(List.of(new Member.Plate(3e-3, 10e-3, false)), plug.members());
        assertEquals(OptionalDouble.empty(), plug.edge());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1e-3, Double.NaN})
    void noHoleIsRefused(double size) {
        assertThrows(IllegalArgumentException.class, () -> new Plug(size, 3e-3));
        assertThrows(IllegalArgumentException.class, () -> new Plug(10e-3, size));
    }
}

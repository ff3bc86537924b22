package org.seamtally.seam;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A straight fillet along a plate's edge: a gusset or a tab on another part of the same thickness.
 *
 * @param thickness of the plate, m
 * @param length of the seam, m
 * @param angle the dihedral angle itself, rad, 20° to 160°
 * @param fillet section of the deposit
 */
public record PlateFillet(double thickness, double length, double angle, DepositSection fillet) implements Joint {

    /** @throws IllegalArgumentException where the angle is out of range */
    public PlateFillet {
        WeldedAngle.require(angle);
    }

    @Override
    public Optional<RootLine> curve() {
        return Optional.of(new StraightLine(length, angle));
    }

    @Override
    public Optional<DepositSection> section() {
        return Optional.of(fillet);
    }

    @Override
    public List<Member> members() {
        return List.of(new Member.Plate(thickness, length, true), new Member.Plate(thickness, length, false));
    }

    @Override
    public OptionalDouble edge() {
        return OptionalDouble.of(thickness);
    }

    @Override
    public Practice usualPractice() {
        return Practice.PLATE;
    }
}

package org.seamtally.seam;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One end of a sleeve, welded all round to the tube inside it. The root circle is the inner tube's outside, and one leg
 * lies on the sleeve's end.
 *
 * @param branchDiameter outside diameter of the inner tube, m
 * @param branchWall m
 * @param sleeveDiameter outside diameter of the sleeve, m
 * @param sleeveWall m
 * @param fillet section of the deposit
 */
public record TubeSleeve(
        double branchDiameter, double branchWall, double sleeveDiameter, double sleeveWall, DepositSection fillet)
        implements Joint {

    /** @throws IllegalArgumentException where the inner tube does not go into the sleeve */
    public TubeSleeve {
        if (!fits(branchDiameter, sleeveDiameter, sleeveWall)) {
            throw new IllegalArgumentException("a tube of " + branchDiameter + " m does not go into a sleeve of "
                    + sleeveDiameter + " m with a wall of " + sleeveWall + " m");
        }
    }

    /** Whether the inner tube goes into the sleeve; 1e-9 of the size is rounding. */
    public static boolean fits(double branchDiameter, double sleeveDiameter, double sleeveWall) {
        return branchDiameter <= (sleeveDiameter - 2 * sleeveWall) * (1 + 1e-9);
    }

    @Override
    public Optional<RootLine> curve() {
        return Optional.of(new TubeOnPlane(branchDiameter / 2, Math.PI / 2));
    }

    @Override
    public Optional<DepositSection> section() {
        return Optional.of(fillet);
    }

    @Override
    public List<Member> members() {
        return List.of(
                new Member.Tube(sleeveDiameter, sleeveWall, 0, 1), new Member.Tube(branchDiameter, branchWall, 0, 2));
    }

    @Override
    public OptionalDouble edge() {
        return OptionalDouble.of(sleeveWall);
    }

    @Override
    public Practice usualPractice() {
        return Practice.SLEEVE;
    }
}

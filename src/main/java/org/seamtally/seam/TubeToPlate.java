package org.seamtally.seam;

import java.util.List;
import java.util.Optional;

/**
 * A tube's end on the face of a plate.
 *
 * @param branchDiameter outside diameter, m
 * @param branchWall m
 * @param plateThickness m
 * @param angle between axis and plate, rad, 20° to 160°; 90° is square
 * @param fillet section of the deposit
 */
public record TubeToPlate(
        double branchDiameter, double branchWall, double plateThickness, double angle, DepositSection fillet)
        implements Joint {

    /** @throws IllegalArgumentException where the angle is out of range */
    public TubeToPlate {
        WeldedAngle.require(angle);
    }

    @Override
    public Optional<RootLine> curve() {
        return Optional.of(new TubeOnPlane(branchDiameter / 2, angle));
    }

    @Override
    public Optional<DepositSection> section() {
        return Optional.of(fillet);
    }

    @Override
    public List<Member> members() {
        return List.of(
                new Member.Tube(branchDiameter, branchWall, 0, 1),
                new Member.Plate(plateThickness, branchDiameter / Math.sin(angle), false));
    }

    @Override
    public Practice usualPractice() {
        return Practice.TUBE;
    }
}

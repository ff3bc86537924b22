package org.seamtally.seam;

import java.util.List;
import java.util.Optional;

/**
 * A coped tube (the branch) on the side of another (the main).
 *
 * @param branchDiameter outside diameter, m
 * @param branchWall m
 * @param mainDiameter outside diameter, m
 * @param mainWall m
 * @param angle between the axes, rad, 20° to 160°
 * @param offset between the axes, m
 * @param fillet section of the deposit
 */
public record TubeToTube(
        double branchDiameter,
        double branchWall,
        double mainDiameter,
        double mainWall,
        double angle,
        double offset,
        DepositSection fillet)
        implements Joint {

    /** @throws IllegalArgumentException where the branch overhangs the main tube or the angle is out of range */
    public TubeToTube {
        WeldedAngle.require(angle);
        new TwoTubes(branchDiameter / 2, mainDiameter / 2, angle, offset);
    }

    /** Whether a branch of this size at this offset stays within the main tube. */
    public static boolean fits(double branchDiameter, double mainDiameter, double offset) {
        return Math.abs(offset) + branchDiameter / 2 <= mainDiameter / 2 * (1 + TwoTubes.OVERHANG_ALLOWED);
    }

    @Override
    public Optional<RootLine> curve() {
        return Optional.of(new TwoTubes(branchDiameter / 2, mainDiameter / 2, angle, offset));
    }

    @Override
    public Optional<DepositSection> section() {
        return Optional.of(fillet);
    }

    @Override
    public List<Member> members() {
        return List.of(
                new Member.Tube(branchDiameter, branchWall, 0, 1),
                new Member.Tube(mainDiameter, mainWall, branchDiameter / Math.sin(angle), 2));
    }

    @Override
    public Practice usualPractice() {
        return Practice.TUBE;
    }
}

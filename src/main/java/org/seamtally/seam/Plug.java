package org.seamtally.seam;

import java.util.List;
import java.util.Optional;

/**
 * A plug (rosette): a round hole in the upper part, filled.
 *
 * @param holeDiameter m
 * @param depth of the hole, the upper part's thickness, m
 */
public record Plug(double holeDiameter, double depth) implements Joint {

    /** @throws IllegalArgumentException where there is no hole to fill */
    public Plug {
        if (!(holeDiameter > 0) || !(depth > 0)) {
            throw new IllegalArgumentException("a hole of " + holeDiameter + " m, " + depth + " m deep");
        }
    }

    @Override
    public Optional<RootLine> curve() {
        return Optional.empty();
    }

    @Override
    public Optional<DepositSection> section() {
        return Optional.empty();
    }

    @Override
    public Seam seam() {
        return Seam.ofPlug(Math.PI / 4 * holeDiameter * holeDiameter * depth);
    }

    @Override
    public List<Member> members() {
        return List.of(new Member.Plate(depth, holeDiameter, false));
    }

    @Override
    public Practice usualPractice() {
        return Practice.PLUG;
    }
}

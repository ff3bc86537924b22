package org.seamtally.seam;

import java.util.List;

/** A straight seam between two flat members that meet at one dihedral angle all along. */
final class StraightLine implements RootLine, Stretch {

    private final double length;
    private final Station everywhere;

    /**
     * @param length m, positive
     * @param dihedral rad, above 0 and below π
     */
    StraightLine(double length, double dihedral) {
        if (!(length > 0)) {
            throw new IllegalArgumentException("a seam of " + length + " m");
        }
        if (!(dihedral > 0 && dihedral < Math.PI)) {
            throw new IllegalArgumentException("members at " + dihedral + " rad leave no corner to weld");
        }
        this.length = length;
        this.everywhere = new Station(1, Math.cos(dihedral), Math.sin(dihedral), 0, 0, 0);
    }

    @Override
    public List<Stretch> stretches() {
        return List.of(this);
    }

    @Override
    public double end() {
        return length;
    }

    @Override
    public boolean closed() {
        return false;
    }

    @Override
    public Station at(double parameter) {
        return everywhere;
    }
}

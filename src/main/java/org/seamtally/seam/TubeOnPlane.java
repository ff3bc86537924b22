package org.seamtally.seam;

import java.util.List;

/**
 * The ellipse in which a round tube meets a plane: semi-axes r and r / sin θ, θ between the tube's axis and the plane.
 *
 * <p>With φ round the tube from the heel's side, n_b·n = cos φ cos θ (analytic geometry; no other source). At θ = 90° it
 * is a circle, which also serves a sleeve's end: there the root circle lies on the inner tube.
 */
final class TubeOnPlane implements RootLine, Stretch {

    private final double radius;
    private final double sinAngle;
    private final double cosAngle;

    /**
     * @param radius outside radius r of the tube, m, positive
     * @param angle θ, rad, above 0 and below π
     */
    TubeOnPlane(double radius, double angle) {
        if (!(radius > 0)) {
            throw new IllegalArgumentException("a tube of radius " + radius + " m");
        }
        if (!(angle > 0 && angle < Math.PI)) {
            throw new IllegalArgumentException("an axis at " + angle + " rad does not cross the plane");
        }
        this.radius = radius;
        this.sinAngle = Math.sin(angle);
        this.cosAngle = Math.cos(angle);
    }

    @Override
    public List<Stretch> stretches() {
        return List.of(this);
    }

    @Override
    public double end() {
        return 2 * Math.PI;
    }

    @Override
    public boolean closed() {
        return true;
    }

    /** About the plane through the tube's axis that is square to the other plane. */
    @Override
    public boolean mirrored() {
        return true;
    }

    @Override
    public Station at(double parameter) {
        double sin = Math.sin(parameter);
        double cos = Math.cos(parameter);
        double sinDihedral = sinDihedral(sin, cos);
        // in the plane a points outwards while the seam turns inwards: a·dT = −dτ, tan τ = −tan φ / sin θ
        double turn = -sinAngle / (sinDihedral * sinDihedral);
        return new Station(speedOf(sinDihedral), -cos * cosAngle, sinDihedral, sin * cosAngle, turn, 0);
    }

    /** n_b × n with n = (0, 0, 1) is (sin φ, cos φ sin θ, 0): the seam's direction, and |N| = sin ψ. */
    private double sinDihedral(double sin, double cos) {
        return Math.sqrt(sin * sin + cos * sinAngle * (cos * sinAngle));
    }

    private double speedOf(double sinDihedral) {
        return radius / sinAngle * sinDihedral;
    }

    @Override
    public double speed(double parameter) {
        return speedOf(sinDihedral(Math.sin(parameter), Math.cos(parameter)));
    }
}

package org.seamtally.seam;

import java.util.List;

/**
 * The line in which the outsides of two round tubes meet: a branch of radius r whose axis meets the main tube's (radius
 * R) at an angle θ and passes it at an offset e.
 *
 * <p>With φ the angle round the branch, y = e + r sin φ and z = √(R² − y²), the outward normals are n_b = (−cos φ sin θ,
 * sin φ, cos φ cos θ) and n = (0, y/R, z/R); the seam runs along N = n_b × n, and ds = r R |N| / (z sin θ) dφ (analytic
 * geometry; no other source).
 *
 * <p>z nearly vanishes at the saddle of tubes of nearly one size. Its square is a quartic in sin φ over cos φ; the
 * parameter used here is the elliptic integral of the first kind that belongs to that quartic, so that dφ/z is constant
 * and every quantity is smooth and periodic in it. The number of points needed then grows with the logarithm of the gap
 * between the tubes only. Tubes of exactly one size have a kink at each saddle; there each half is an arc of an ellipse
 * and φ itself will do.
 */
final class TwoTubes implements RootLine {

    /** How far past touching the branch may reach, as a share of R, and still count as equal: rounding in a size. */
    static final double OVERHANG_ALLOWED = 1e-9;

    /**
     * The least gap between the tubes, over r, that the elliptic parameter is given. Below it length and volume no
     * longer depend on the gap in the twelfth digit (the volume goes with its square root).
     */
    private static final double LEAST_GAP = 1e-24;

    private final double branchRadius;
    private final double mainRadius;
    private final double offset;
    private final double sinAngle;
    private final double cosAngle;

    /**
     * @param branchRadius r, m, positive
     * @param mainRadius R, m
     * @param angle θ between the axes, rad, above 0 and below π
     * @param offset e between the axes, m; |e| + r may not exceed R
     */
    TwoTubes(double branchRadius, double mainRadius, double angle, double offset) {
        if (!(branchRadius > 0) || !(Math.abs(offset) + branchRadius <= mainRadius * (1 + OVERHANG_ALLOWED))) {
            throw new IllegalArgumentException("a branch of radius " + branchRadius + " m at an offset of " + offset
                    + " m overhangs a main tube of radius " + mainRadius + " m");
        }
        if (!(angle > 0 && angle < Math.PI)) {
            throw new IllegalArgumentException("axes at " + angle + " rad do not cross");
        }
        this.mainRadius = mainRadius;
        // the mirror image has the same length and volume
        this.offset = Math.abs(offset);
        this.branchRadius = Math.min(branchRadius, mainRadius - this.offset);
        this.sinAngle = Math.sin(angle);
        this.cosAngle = Math.cos(angle);
    }

    @Override
    public List<Stretch> stretches() {
        return equalTubes() ? List.of(new HalfOfEqualTubes(1), new HalfOfEqualTubes(-1)) : List.of(new Loop());
    }

    /** At each saddle of equal tubes the two planes of the seam cross at a right angle, and the surfaces touch. */
    @Override
    public List<Station> corners() {
        if (!equalTubes()) {
            return List.of();
        }
        Station saddle = new Station(0, -1, 0, 0, -Math.PI / 2, 0);
        return List.of(saddle, saddle);
    }

    private boolean equalTubes() {
        return offset == 0 && branchRadius == mainRadius;
    }

    /**
     * @param sin sine of the angle φ round the branch
     * @param cos its cosine
     * @param z height of the seam over the main axis, m
     * @param phiRate dφ by the parameter
     * @param zRate dz by the parameter, m
     * @param overZ dφ/z by the parameter, 1/m
     */
    private Station station(double sin, double cos, double z, double phiRate, double zRate, double overZ) {
        Crossing at = crossing(sin, cos, z);
        double ny = at.ny;
        double nz = at.nz;
        double cross = at.cross;
        double x = at.x;
        double sinDihedral = at.sinDihedral;
        double nyRate = branchRadius * cos * phiRate / mainRadius;
        double nzRate = zRate / mainRadius;
        double crossRate = -sin * sinAngle * phiRate;
        double xRate = cos * phiRate * nz + sin * nzRate + sin * phiRate * cosAngle * ny - cos * cosAngle * nyRate;
        double yRate = crossRate * nz + cross * nzRate;
        double zRateOfN = -crossRate * ny - cross * nyRate;
        double cosDihedral = -(sin * ny + cos * cosAngle * nz);
        double drift = -(cos * phiRate * ny + sin * nyRate - sin * phiRate * cosAngle * nz + cos * cosAngle * nzRate);
        // a = n × T with T = N/|N|, and a·dT = a·dN/|N| since a is square to T
        double turnIn = (-cross * xRate + x * (nz * yRate - ny * zRateOfN)) / (sinDihedral * sinDihedral);
        // n·dN = −dn·N
        double turnOff = -cross * (nyRate * nz - nzRate * ny) / sinDihedral;
        return new Station(speed(sinDihedral, overZ), cosDihedral, sinDihedral, drift, turnIn, turnOff);
    }

    private double speed(double sinDihedral, double overZ) {
        return branchRadius * mainRadius / sinAngle * sinDihedral * overZ;
    }

    /**
     * How the two surfaces cross: n = (0, ny, nz) and N = n_b × n = (x, cross·nz, −cross·ny), whose length is the dihedral
     * angle's sine.
     *
     * @param cross cos φ sin θ
     */
    private record Crossing(double ny, double nz, double cross, double x, double sinDihedral) {}

    private Crossing crossing(double sin, double cos, double z) {
        double ny = (offset + branchRadius * sin) / mainRadius;
        double nz = z / mainRadius;
        double cross = cos * sinAngle;
        double x = sin * nz - cos * cosAngle * ny;
        return new Crossing(ny, nz, cross, x, Math.sqrt(x * x + cross * cross));
    }

    /** The whole way round, where the branch is the smaller tube: parameter from 0 to four quarter periods. */
    private final class Loop implements Stretch {

        private final JacobiFunctions functions;
        /** The Möbius map sin φ = (t + shift)/(1 + shift t) that makes the quartic even in t. */
        private final double shift;

        private final double unshift;
        private final double width;
        private final double zScale;
        private final double overZ;

        Loop() {
            double near = Math.max((mainRadius - offset - branchRadius) / branchRadius, LEAST_GAP);
            double far = Math.max((mainRadius + offset - branchRadius) / branchRadius, LEAST_GAP);
            double product = near + far + near * far;
            double root = Math.sqrt(near * far * (2 + near) * (2 + far));
            shift = (far - near) / (product + root);
            // 1 − shift, kept to its last digit where the shift is near 1
            unshift = (near * (2 + far) + root) / (product + root);
            width = Math.sqrt(unshift * (1 + shift));
            double eta = near * (1 + shift) / (unshift - shift * near);
            functions = new JacobiFunctions(Math.sqrt(eta * (2 + eta)) / (1 + eta));
            double reach = Math.sqrt((unshift + near) * (1 + far + shift));
            zScale = branchRadius * reach;
            overZ = width / zScale;
        }

        @Override
        public double end() {
            return 4 * functions.quarter();
        }

        @Override
        public boolean closed() {
            return true;
        }

        /** About the plane of the two axes, where they meet. */
        @Override
        public boolean mirrored() {
            return offset == 0;
        }

        /** Sine and cosine of φ, and z. */
        private record Place(double sin, double cos, double z) {}

        private Place place(double parameter) {
            JacobiFunctions.Values v = functions.at(parameter);
            // 1 + shift·sn, without cancelling where both are near 1
            double onePlusSn = v.sn() < 0 ? v.cn() * v.cn() / (1 - v.sn()) : 1 + v.sn();
            double base = unshift + shift * onePlusSn;
            // (sn + shift)/base, likewise
            return new Place((onePlusSn - unshift) / base, width * v.cn() / base, zScale * v.dn() / base);
        }

        @Override
        public Station at(double parameter) {
            Place place = place(parameter);
            double phiRate = overZ * place.z;
            double zRate = -(offset + branchRadius * place.sin) * branchRadius * place.cos * overZ;
            return station(place.sin, place.cos, place.z, phiRate, zRate, overZ);
        }

        @Override
        public double speed(double parameter) {
            Place place = place(parameter);
            return TwoTubes.this.speed(crossing(place.sin, place.cos, place.z).sinDihedral, overZ);
        }
    }

    /** One of the two arcs between the saddles of tubes of one size; the parameter is φ from the saddle, 0 to π. */
    private final class HalfOfEqualTubes implements Stretch {

        private final int side;

        HalfOfEqualTubes(int side) {
            this.side = side;
        }

        @Override
        public double end() {
            return Math.PI;
        }

        @Override
        public boolean closed() {
            return false;
        }

        /** About the plane of the two axes. */
        @Override
        public boolean mirrored() {
            return true;
        }

        @Override
        public Station at(double parameter) {
            double sin = Math.sin(parameter);
            double cos = Math.cos(parameter);
            double z = mainRadius * sin;
            return station(side * cos, -side * sin, z, 1, mainRadius * cos, 1 / z);
        }
    }
}

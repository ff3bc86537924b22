package org.seamtally.seam;

/** A vector in space, for the reference only: so that no arithmetic is shared with what it tests. */
record MarchedVector(double x, double y, double z) {

    MarchedVector plus(MarchedVector o) {
        return new MarchedVector(x + o.x, y + o.y, z + o.z);
    }

    MarchedVector minus(MarchedVector o) {
        return plus(o.times(-1));
    }

    MarchedVector times(double f) {
        return new MarchedVector(f * x, f * y, f * z);
    }

    double dot(MarchedVector o) {
        return x * o.x + y * o.y + z * o.z;
    }

    MarchedVector cross(MarchedVector o) {
        return new MarchedVector(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
    }

    double norm() {
        return Math.sqrt(dot(this));
    }

    MarchedVector unit() {
        return times(1 / norm());
    }

    double angleTo(MarchedVector o) {
        return Math.atan2(cross(o).norm(), dot(o));
    }
}

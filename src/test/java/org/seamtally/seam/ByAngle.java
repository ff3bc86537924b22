package org.seamtally.seam;

/**
 * The line in which two tubes meet as a general-purpose integrator would be given it: by the angle φ round the branch, by
 * plain vectors, from the same formulas as {@link TwoTubes} but without its parameter.
 *
 * @param branchRadius r, m
 * @param mainRadius R, m, above r
 * @param angle between the axes, rad
 * @param section of the deposit
 */
record ByAngle(double branchRadius, double mainRadius, double angle, DepositSection section) {

    /** Length by the angle, m. */
    double length(double phi) {
        return at(phi).speed();
    }

    /** Deposit by the angle with the face as asked for, m³. */
    double deposit(double phi) {
        return section.deposit(at(phi), section.asked());
    }

    /** The same with a groove's fuller face past 135°. */
    double wholeDeposit(double phi) {
        Station at = at(phi);
        FaceSegment asked = section.asked();
        return section.deposit(at, asked)
                + (at.dihedral() > DepositSection.WIDEST_FILLET ? section.grooveDeposit(at, asked) : 0);
    }

    private Station at(double phi) {
        double sin = Math.sin(phi);
        double cos = Math.cos(phi);
        double y = branchRadius * sin;
        double z = Math.sqrt((mainRadius - y) * (mainRadius + y));
        double yRate = branchRadius * cos;
        double zRate = -y * yRate / z;
        MarchedVector ofBranch = new MarchedVector(-cos * Math.sin(angle), sin, cos * Math.cos(angle));
        MarchedVector branchRate = new MarchedVector(sin * Math.sin(angle), cos, -sin * Math.cos(angle));
        MarchedVector ofMain = new MarchedVector(0, y / mainRadius, z / mainRadius);
        MarchedVector mainRate = new MarchedVector(0, yRate / mainRadius, zRate / mainRadius);
        MarchedVector along = ofBranch.cross(ofMain);
        MarchedVector alongRate = branchRate.cross(ofMain).plus(ofBranch.cross(mainRate));
        double sinDihedral = along.norm();
        MarchedVector leg = ofMain.cross(along).times(1 / sinDihedral);
        return new Station(
                branchRadius * mainRadius * sinDihedral / (z * Math.sin(angle)),
                -ofBranch.dot(ofMain),
                sinDihedral,
                Double.NaN,
                leg.dot(alongRate) / sinDihedral,
                ofMain.dot(alongRate) / sinDihedral);
    }
}

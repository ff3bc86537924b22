package org.seamtally.gas;

/**
 * How finely a transient is computed.
 *
 * @param cells number of cells, at least 1; 1 takes the whole hose as one
 * @param tolerance of one step, as a share of the pressure and of the gas that a start takes off
 */
record Resolution(int cells, double tolerance) {

    /**
     * Chosen by measurement: 20 equal cells against 160, over bores of 1.5 to 13 mm and lengths of 1 to 60 m, move the
     * net surge by 0.2 % at the very worst (the narrowest bores) and by less than 0.01 % in usual hoses. Cells that are
     * shorter at the ends were tried and are worse.
     */
    static final Resolution CELLS = new Resolution(20, 1e-5);

    /** One cell costs little: close to what a general solver gives. */
    static final Resolution LUMPED = new Resolution(1, 1e-7);

    /** How much of the pressure may be lost along a hose, at its inlet's pressure, that is taken as one cell. */
    static final double LUMPED_DROP = 0.01;

    /**
     * Nor may the steady drop be more than this share of the pressure that a start takes off: one cell gives off less
     * or more than the hose does by up to that share. Measured: net surge is then within 0.06 % of the line's.
     */
    static final double LUMPED_SHARE = 5e-4;

    Resolution {
        if (cells < 1 || !(tolerance > 0 && tolerance < 1)) {
            throw new IllegalArgumentException("no resolution: " + cells + " cells, tolerance " + tolerance);
        }
    }

    /** One cell where the hose's own pressure drop does not matter, at the steady flow nor at the first instant's. */
    static Resolution usual(SetUp setUp, SteadyState steady) {
        FlowPath path = new FlowPath(setUp);
        double supply = setUp.supplyPressure();
        double squareDrop = path.squareDrop(path.torchEnd().at(supply).value());
        double atPeak = squareDrop < supply * supply ? 1 - Math.sqrt(1 - squareDrop / (supply * supply)) : 1;
        double drop = steady.inletPressure() - steady.endPressure();
        boolean small = atPeak < LUMPED_DROP
                && drop < LUMPED_DROP * steady.inletPressure()
                && drop < LUMPED_SHARE * (supply - steady.meanPressure());
        return small ? LUMPED : CELLS;
    }

    /** Where the nodes stand in a hose, m from its inlet. */
    double[] positions(double length) {
        double[] positions = new double[cells];
        for (int i = 1; i < cells; i++) {
            positions[i] = length * i / (cells - 1);
        }
        return positions;
    }
}

package org.seamtally.preheat;

import org.seamtally.seam.Member;

/**
 * The part of one member that is brought up to temperature.
 *
 * @param steelVolume m³
 * @param surface outer surface that gives off heat, m²
 * @param finPerimeter perimeter that gives off heat along the metal beyond the zone, m, all ways out together
 * @param finArea area of steel that heat runs out through, m², all ways out together
 * @param waysOut number of ways out that these are shared by
 */
record HeatedZone(double steelVolume, double surface, double finPerimeter, double finArea, int waysOut) {

    /**
     * The zone in a member: along a tube, from the joint's footprint outwards; in a plate, a disc (at an edge half a
     * disc) that reaches the zone's width beyond half the footprint.
     *
     * @param zone width to be heated beyond the joint, m, positive
     */
    static HeatedZone of(Member member, double zone) {
        if (member instanceof Member.Tube tube) {
            double length = tube.waysOut() * zone + tube.footprint();
            double perimeter = Math.PI * tube.outsideDiameter();
            // the inside holds still air and gives off next to nothing
            return new HeatedZone(
                    tube.steelArea() * length, perimeter * length, perimeter, tube.steelArea(), tube.waysOut());
        }
        Member.Plate plate = (Member.Plate) member;
        double radius = zone + plate.footprint() / 2;
        double share = plate.atEdge() ? 0.5 : 1;
        double face = share * Math.PI * radius * radius;
        double rim = share * 2 * Math.PI * radius;
        // both faces are open to the air
        return new HeatedZone(face * plate.wall(), 2 * face, 2 * rim, rim * plate.wall(), 1);
    }

    /**
     * Heat given off at a temperature: from the surface by radiation and convection, and out along each way by the
     * infinite fin, √(h P k A)·(T − T_a).
     *
     * @param temperature K
     * @param ambient K, at most the temperature
     * @return W
     */
    double losses(double temperature, double ambient) {
        double rise = temperature - ambient;
        if (rise <= 0) {
            return 0;
        }
        double flux = HeatLoss.flux(temperature, ambient);
        double transfer = flux / rise;
        double fin = Math.sqrt(transfer * finPerimeter * HeatLoss.CONDUCTIVITY * finArea) * rise;
        return surface * flux + waysOut * fin;
    }
}

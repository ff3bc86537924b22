package org.seamtally.gas;

/** What lies behind the gas valve: the flow that a pressure there drives out into the air. */
@FunctionalInterface
interface Outlet {

    /** The valve shut: nothing flows. */
    Outlet SHUT = pressure -> new Rate(0, 0);

    /**
     * The flow out.
     *
     * @param pressure Pa, at the valve
     * @return mass flow, kg/s, and its derivative by the pressure, kg/(s·Pa)
     */
    Rate at(double pressure);
}

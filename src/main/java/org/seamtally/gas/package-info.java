/**
 * The shielding gas between supply and arc: what pressure the hose holds while the gas flows, what a start throws away,
 * how much gas a joint takes and where it goes, and which hose set-up wastes least.
 *
 * <p>Plain Java, SI doubles inside, pressures absolute. Flows and volumes are at the reference state, see
 * {@link org.seamtally.gas.ReferenceState}.
 */
package org.seamtally.gas;

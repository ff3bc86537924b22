/**
 * What was typed with a unit, in SI, and back again: "1.5 in", "15 ft3/h", "50 psi", "28.00/lb".
 *
 * <p>Conversion is exact, in decimals and whole-number ratios, and goes to double once: 1.5 in and 38.1 mm are the same
 * tube, so they are the same double. Inside the project every quantity is an SI double; units are met at its edge only.
 */
package org.seamtally.quantity;

/**
 * What the joint's metal becomes: composition after dilution, carbon equivalents, hardenability, cooling, hardness beside
 * the seam, preheat, and the fillet against the code's tubular clause. It takes SI values and says of each figure whether
 * it lies in the range its formula is meant for. No load is considered anywhere.
 */
package org.seamtally.metal;

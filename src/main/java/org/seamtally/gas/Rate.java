package org.seamtally.gas;

/** A quantity and its derivative by the one it depends on. */
record Rate(double value, double slope) {}

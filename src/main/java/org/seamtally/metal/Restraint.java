package org.seamtally.metal;

/** How far the parts are held from following the weld's shrinkage: the three levels of AWS D1.1's hydrogen control. */
public enum Restraint {
    /** Free to move. */
    LOW,
    /** Joined to other members, as most joints of a frame are. */
    MEDIUM,
    /** Held almost rigidly: closing welds and repairs in a finished frame. */
    HIGH
}

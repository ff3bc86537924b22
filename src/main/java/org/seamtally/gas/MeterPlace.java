package org.seamtally.gas;

/** Where the flow meter sits. */
public enum MeterPlace {
    /** At the supply: between starts the hose behind it fills to the supply's pressure. */
    SUPPLY,
    /** At the machine, before its valve: the hose is always at supply pressure, nothing is stored behind the meter. */
    MACHINE
}

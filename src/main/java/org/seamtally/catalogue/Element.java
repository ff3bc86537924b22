package org.seamtally.catalogue;

/** The alloying elements that the formulas of steel welding know, by chemical symbol. */
public enum Element {
    C,
    MN,
    SI,
    P,
    S,
    CR,
    MO,
    NI,
    CU,
    V,
    NB,
    TI,
    ZR,
    AL,
    CO,
    N,
    B;

    /** The chemical symbol, such as {@code Mn}. */
    public String symbol() {
        return name().charAt(0) + name().substring(1).toLowerCase(java.util.Locale.ROOT);
    }
}

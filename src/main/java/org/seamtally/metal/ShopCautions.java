package org.seamtally.metal;

import java.util.List;

/**
 * What a shop that welds steel tube should keep in mind, once for a frame. All of it defers to local codes, the qualified
 * procedure and the sanctioning body. Sources, from memory where not marked: ANSI Z49.1; NFPA 51B; 29 CFR 1910.252(c) and
 * 1910.1026 (read in second-hand copies).
 */
public final class ShopCautions {

    private static final List<Caution> ALL = List.of(
            new Caution(
                    "rules-first",
                    "This is an estimate. The qualified welding procedure, the sanctioning body's rules and local codes come"
                            + " before anything it says; no load was considered."),
            new Caution(
                    "fume",
                    "Welding fume holds manganese, and from chromium steels and stainless plates hexavalent chromium as"
                            + " well. Draw it off at the joint and keep the head out of the plume; local exposure limits"
                            + " apply (in the United States 29 CFR 1910.1026 for chromium)."),
            new Caution(
                    "argon-in-closed-spaces",
                    "Argon is heavier than air, has no smell and pushes the air out of pits, tanks and closed rooms. Ventilate"
                            + " and measure oxygen where it can gather; shut the cylinder when work stops."),
            new Caution(
                    "ultraviolet",
                    "The arc burns eyes and bare skin in seconds, by reflection too, and makes ozone. Wear the shade that the"
                            + " local standard gives for the current, cover the skin, screen off others."),
            new Caution(
                    "hot-metal-and-fuel-gas",
                    "Preheated metal looks cold: mark it. Check a preheating torch and its hoses for leaks, fit flashback"
                            + " arrestors, clear what can burn, keep an extinguisher and watch for fire afterwards."),
            new Caution(
                    "cleanliness",
                    "Clean rod and tube to bright metal, free of scale, oil and paint: dirt brings pores and hydrogen. Use"
                            + " isopropyl alcohol or acetone, let it dry fully before striking an arc, and take rags and can"
                            + " away first."),
            new Caution(
                    "chlorinated-cleaner",
                    "Never use a chlorinated cleaner, brake cleaner among them, on parts to be welded or near an arc: the arc"
                            + " turns its vapour into phosgene, which can kill."),
            new Caution(
                    "plated-ends",
                    "Zinc, cadmium, chrome or nickel plating gives off toxic fume and cracks the weld. Take it off well"
                            + " beyond the seam, inside as well as outside."),
            new Caution(
                    "thoriated-tungsten",
                    "Thoriated tungsten is weakly radioactive; the dust of grinding it must not be breathed. Choose another"
                            + " oxide, or grind with extraction and collect the dust."),
            new Caution(
                    "closed-members",
                    "A closed tube builds up pressure when it is preheated or when the last seam closes, and may blow the"
                            + " weld out or burst. Give each one a vent hole first, and never weld one that may hold a fuel or"
                            + " a solvent."));

    private ShopCautions() {}

    /** All of them, the general one first. */
    public static List<Caution> all() {
        return ALL;
    }
}

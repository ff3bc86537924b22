package org.seamtally.frame;

import java.util.List;

/**
 * What a figure rests on, and how far it can be trusted.
 *
 * @param figure the part of an answer that it is about
 * @param text plain words
 */
public record Basis(String figure, String text) {

    /** Of a seam's length and deposit. */
    public static final Basis SEAM = new Basis(
            "seam",
            "The line in which the outsides of ideal round tubes and flat plates meet, integrated to better than 1e-9; the"
                    + " deposit is a fillet of constant legs along it, by Pappus's theorem for a section on a curved line."
                    + " Real copes, gaps and beads differ from that by several per cent: no digit beyond the second or"
                    + " third says anything about a real weld.");

    /** Of filler. */
    public static final Basis FILLER = new Basis(
            "filler", "Mass of the deposit at 7850 kg/m³; consumed adds stubs and what does not get into the weld.");

    /** Of arc time. */
    public static final Basis ARC = new Basis(
            "arc",
            "Arc time from the travel speed given, else from the melting balance at 10.5 J/mm³, bounded by the greatest"
                    + " travel speed. The melting efficiency is a figure to fit to the shop's own timed welds: as it"
                    + " comes it may be 40 % off either way, and arc time with it. Arc energy is U·I/v, which AWS and"
                    + " ASME call heat input; heat input here is arc efficiency times that.");

    /** Of gas. */
    public static final Basis GAS = new Basis(
            "gas",
            "Burning, pre-flow and post-flow at the set flow. The start surge is the net surge of the computed start"
                    + " transient, ∫(flow − setting)dt over each start's own gas-on time, the hose having filled up"
                    + " before it; stored gas stands beside it as its upper bound. Taking the torch line as one nozzle"
                    + " is a decision of this project: peak flow is a model value, ± 50 %. No measured start surges were"
                    + " found in print to hold it against. A leak runs through all the labour time; while an order is"
                    + " set up, that of the leakiest set-up in use.");

    /** Of preheat. */
    public static final Basis PREHEAT = new Basis(
            "preheat",
            "Heat content of the steel in the zone (EN 1993-1-2, 3.4.1.2), losses by radiation, still air and along the"
                    + " tubes, divided by the heating efficiency, which for a flame held by hand is anything from 0.1 to"
                    + " 0.4: fit it to the shop's own bottles.");

    /** Of what becomes of the metal. */
    public static final Basis METAL = new Basis(
            "metal",
            "Compositions by dilution, element by element. Carbon equivalents, ideal diameter (ASTM A255), martensite"
                    + " start (Andrews; van Bohemen), t8/5 (EN 1011-2 annex D, with its own 0.6 of the arc energy, the"
                    + " thicker wall and shape factor 0.67 for a fillet) and hardness (Maynier et al.; Yurioka et al.)"
                    + " are correlations of other people's tests: hardness is good to some 30 to 50 HV at best, and thin"
                    + " tube lies outside the preheat methods' ranges, which is said where it does. A review compares"
                    + " fillers; only the shop's own qualified procedure and tests say what a joint is.");

    /** Of the fillet against the code. */
    public static final Basis FILLET = new Basis(
            "fillet",
            "Legs against AWS D1.1's tubular clause by zones of the dihedral angle (from memory), for the thinner wall. No"
                    + " load was considered: meeting the rule is no acceptance, and the code does not cover thin walls or"
                    + " chromium-molybdenum tube.");

    /** Of money. */
    public static final Basis COST = new Basis(
            "cost",
            "Lines are for the whole order, each rounded once, half to even; the total is their sum. Filler is priced by"
                    + " mass consumed. Overhead is a share of cost, a margin a share of the price.");

    /** All that a frame estimate rests on. */
    static List<Basis> ofFrame(boolean preheat, boolean cost) {
        List<Basis> list = new java.util.ArrayList<>(List.of(SEAM, FILLER, ARC, GAS, METAL, FILLET));
        if (preheat) {
            list.add(PREHEAT);
        }
        if (cost) {
            list.add(COST);
        }
        return list;
    }
}

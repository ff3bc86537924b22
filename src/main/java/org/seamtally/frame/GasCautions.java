package org.seamtally.frame;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seamtally.gas.StartTransient;
import org.seamtally.gas.SteadyState;
import org.seamtally.quantity.Decimals;

/** What to look at on a gas set-up. */
final class GasCautions {

    // more than this in a row and nobody reads them
    private static final int MOST = 8;

    private GasCautions() {}

    /** @param name of the set-up, or the joints that use it, where there are several */
    static List<Caution> of(StartTransient start, Optional<String> name) {
        List<Caution> cautions = new ArrayList<>();
        SteadyState steady = start.steady();
        String which = name.map(n -> n + ": ").orElse("");
        if (!steady.reachable()) {
            cautions.add(caution(
                    "flow-not-reached",
                    which + "the set flow cannot be reached: even with the meter open only "
                            + Decimals.of(100 * steady.flow() / start.setUp().flow(), 0)
                            + " % of it passes, and gas is counted at that. The shield is too thin: raise the supply's"
                            + " pressure or take a wider hose or orifice."));
            return cautions;
        }
        if (!steady.stands()) {
            cautions.add(caution(
                    "setting-drifts",
                    which + "a meter set in choked flow and left alone drifts by " + (steady.drift() > 0 ? "+" : "")
                            + Decimals.of(100 * steady.drift(), 1)
                            + " % with this hose and orifice: set the flow anew with the set-up as it is."));
        }
        if (steady.nozzleReynolds() > StartTransient.LAMINAR_NOZZLE) {
            cautions.add(caution(
                    "turbulent-flow",
                    which + "the nozzle's Reynolds number at the set flow is "
                            + Decimals.of(steady.nozzleReynolds(), 0)
                            + ", above 2300: air may be drawn into the shield throughout."));
        } else if (start.peakNozzleReynolds() > StartTransient.LAMINAR_NOZZLE) {
            cautions.add(caution(
                    "turbulent-start",
                    which + "at each start the nozzle's Reynolds number stands above 2300 for "
                            + Decimals.of(start.turbulentTime().orElse(0), 1) + " s (peak "
                            + Decimals.of(start.peakNozzleReynolds(), 0)
                            + "): air may be drawn into the shield. A model value, ± 50 %."));
        }
        return cautions;
    }

    /**
     * What to look at on the set-ups of a frame: with the marks of its joints on each, where there are several; of one
     * cause the first few, and how many more there are.
     */
    static List<Caution> ofFrame(Known known) {
        Map<String, List<Caution>> byCause = new LinkedHashMap<>();
        boolean several = known.starts().size() > 1;
        for (StartTransient start : known.starts()) {
            Optional<String> marks = several ? Optional.of(shortened(known.marks(start.setUp()))) : Optional.empty();
            for (Caution caution : of(start, marks)) {
                byCause.computeIfAbsent(caution.cause(), cause -> new ArrayList<>())
                        .add(caution);
            }
        }
        List<Caution> all = new ArrayList<>();
        byCause.forEach((cause, cautions) -> {
            all.addAll(cautions.subList(0, Math.min(cautions.size(), MOST)));
            if (cautions.size() > MOST) {
                all.add(caution(
                        cause,
                        "the same holds, each with its own figures, for " + (cautions.size() - MOST)
                                + " more gas set-ups of this frame."));
            }
        });
        return all;
    }

    private static String shortened(List<String> marks) {
        return marks.size() <= MOST
                ? String.join(", ", marks)
                : String.join(", ", marks.subList(0, MOST)) + " and " + (marks.size() - MOST) + " more";
    }

    private static Caution caution(String cause, String text) {
        return new Caution(cause, text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1), Optional.empty());
    }
}

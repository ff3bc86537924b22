package org.seamtally.page;

import java.util.function.Function;
import org.seamtally.wire.GasAnswer;
import org.seamtally.wire.Quantity;

/** Where gas goes, in the words of a printed quote. */
enum GasPart {
    ARC("While the arc burns", GasAnswer::arc),
    BACK_PURGE("Back purge", GasAnswer::backPurge),
    PRE_FLOW("Before the arc", GasAnswer::preFlow),
    POST_FLOW("After the arc", GasAnswer::postFlow),
    SURGE("Start surge", GasAnswer::startSurge),
    LEAK("Leaks", GasAnswer::leak);

    private final String words;
    private final Function<GasAnswer, Quantity> part;

    GasPart(String words, Function<GasAnswer, Quantity> part) {
        this.words = words;
        this.part = part;
    }

    String words() {
        return words;
    }

    Quantity of(GasAnswer gas) {
        return part.apply(gas);
    }
}

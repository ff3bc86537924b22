package org.seamtally.frame;

import java.util.List;
import java.util.Optional;
import org.seamtally.metal.ShopCautions;

/** The cautions that stand on every estimate. */
public final class FrameCautions {

    private FrameCautions() {}

    /** What a shop should keep in mind, once for a frame; that other rules go first is said by {@link #always()}. */
    public static List<Caution> ofShop() {
        return ShopCautions.all().stream()
                .filter(caution -> !caution.cause().equals("rules-first"))
                .map(caution -> new Caution(caution.cause(), caution.text(), Optional.empty()))
                .toList();
    }

    /** What no figure here says. */
    public static List<Caution> always() {
        return List.of(
                new Caution(
                        "no-load",
                        "No load was considered: nothing here says that a weld or a frame will carry anything. Design,"
                                + " inspection and acceptance rest with licensed practice, the sanctioning body's rules and"
                                + " local codes.",
                        Optional.empty()),
                new Caution(
                        "no-procedure",
                        "These are figures for a quote, not a welding procedure: the qualified welding procedure stands"
                                + " over every setting shown.",
                        Optional.empty()));
    }
}

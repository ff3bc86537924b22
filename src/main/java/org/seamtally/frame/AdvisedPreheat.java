package org.seamtally.frame;

import java.util.Optional;
import org.joda.money.Money;
import org.seamtally.preheat.HeatSource;
import org.seamtally.preheat.PreheatUse;

/**
 * What a preheat that is advised, and not asked for, would take on one joint. It is in no total.
 *
 * @param temperature advised, K
 * @param use what it takes
 * @param source flame or electricity
 * @param amount its labour and fuel or electricity at the prices given, overhead and margin left out; empty where none of
 *     it is priced
 */
public record AdvisedPreheat(double temperature, PreheatUse use, HeatSource source, Optional<Money> amount) {}

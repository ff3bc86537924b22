package org.seamtally.catalogue;

import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/** Reads analyses as the tables write them: {@code "C 0.28-0.33; Mn 0.40-0.60; P <=0.035"}. */
final class Analysis {

    private Analysis() {}

    /** Reads a typical analysis: an element and its mass per cent, parted by semicolons. */
    static Composition composition(String cell) {
        EnumMap<Element, Double> shares = new EnumMap<>(Element.class);
        for (String part : cell.split(";")) {
            String[] words = words(part);
            put(shares, element(words[0]), Double.valueOf(words[1]));
        }
        return new Composition(shares);
    }

    /** Reads limits: {@code 0.28-0.33}, {@code <=0.035} or {@code >=0.15} after the element. */
    static Map<Element, Limits> limits(String cell) {
        EnumMap<Element, Limits> limits = new EnumMap<>(Element.class);
        for (String part : cell.split(";")) {
            String[] words = words(part);
            put(limits, element(words[0]), bounds(words[1]));
        }
        return limits;
    }

    private static String[] words(String part) {
        String[] words = part.strip().split(" +");
        if (words.length != 2) {
            throw new IllegalArgumentException("\"" + part + "\" is no element with a figure");
        }
        return words;
    }

    private static <T> void put(Map<Element, T> map, Element element, T value) {
        if (map.put(element, value) != null) {
            throw new IllegalArgumentException(element.symbol() + " stands twice in an analysis");
        }
    }

    private static Element element(String symbol) {
        for (Element element : Element.values()) {
            if (element.symbol().equals(symbol)) {
                return element;
            }
        }
        throw new IllegalArgumentException("no element is called \"" + symbol + "\"");
    }

    private static Limits bounds(String text) {
        if (text.startsWith("<=")) {
            return new Limits(OptionalDouble.empty(), OptionalDouble.of(Double.parseDouble(text.substring(2))));
        }
        if (text.startsWith(">=")) {
            return new Limits(OptionalDouble.of(Double.parseDouble(text.substring(2))), OptionalDouble.empty());
        }
        int dash = text.indexOf('-');
        if (dash < 0) {
            throw new IllegalArgumentException("\"" + text + "\" is no range");
        }
        return new Limits(
                OptionalDouble.of(Double.parseDouble(text.substring(0, dash))),
                OptionalDouble.of(Double.parseDouble(text.substring(dash + 1))));
    }
}

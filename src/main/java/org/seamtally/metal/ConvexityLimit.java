package org.seamtally.metal;

import java.util.List;

/**
 * How far a fillet's face may stand out, by published workmanship limits: EN 25817:1992 no. 13 (read), which ISO 5817 1.10
 * kept, and the fillet profile table of AWS D1.1 (from memory).
 */
enum ConvexityLimit {
    EN_25817_B("EN 25817 level B") {
        @Override
        double at(double width) {
            return capped(0.10, 3, width);
        }
    },
    EN_25817_C("EN 25817 level C") {
        @Override
        double at(double width) {
            return capped(0.15, 4, width);
        }
    },
    EN_25817_D("EN 25817 level D") {
        @Override
        double at(double width) {
            return capped(0.25, 5, width);
        }
    },
    AWS_D1_1("AWS D1.1") {
        @Override
        double at(double width) {
            double inches = Customary.inches(width);
            double limit = inches <= 5.0 / 16 ? 1.0 / 16 : inches < 1 ? 1.0 / 8 : 3.0 / 16;
            return limit * Customary.METRES_AN_INCH;
        }
    };

    private final String title;

    ConvexityLimit(String title) {
        this.title = title;
    }

    /** The standard and its level, for the user. */
    String title() {
        return title;
    }

    /** Greatest convexity on a face of that width, both m. */
    abstract double at(double width);

    /** 1 mm and a share of the width, at most a cap in mm. */
    private static double capped(double share, double cap, double width) {
        return Math.min(1e-3 + share * width, cap * 1e-3);
    }

    /** The limits that a seam's convexity exceeds somewhere. */
    static List<ConvexityLimit> exceededBy(FilletSeam seam) {
        return java.util.Arrays.stream(values())
                .filter(limit -> seam.stretches().stream()
                        .mapToDouble(stretch -> seam.faceWidth(stretch.dihedral()))
                        .anyMatch(width -> seam.rise() * width > limit.at(width)))
                .toList();
    }
}

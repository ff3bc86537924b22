package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import java.math.BigDecimal;
import java.util.Arrays;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.seam.Face;

/** The form of a fillet's face. */
@Schema(description = "The form of a fillet's face.")
public record FaceRequest(
        @NotNull
        @Word(Words.FACE_FORM)
        @Schema(description = "Flat, convex (bulging) or concave (hollow).", examples = "convex")
        Leaf form,

        @Share(min = "0", max = "0.25")
        @Schema(
                description = "Convexity or concavity over face width: at most 0.25 where convex, 0.10 where concave;"
                        + " left out where flat.",
                examples = "0.05")
        Leaf rise)
        implements CrossChecked {

    Face face() {
        return new Face(of(form), rise == null ? 0 : Read.number(rise));
    }

    private static Face.Form of(Leaf form) {
        return Arrays.stream(Face.Form.values())
                .filter(f -> f.word().equals(Words.FACE_FORM.find(form.text())))
                .findFirst()
                .orElse(null);
    }

    @Override
    public void check(Contradictions contradictions) {
        if (form == null || of(form) == null) {
            return;
        }
        BigDecimal most = BigDecimal.valueOf(of(form).greatestRise());
        BigDecimal given = Read.tryDecimal(rise);
        if (given != null && given.compareTo(most) > 0) {
            contradictions.add(
                    "rise",
                    Violation.Key.OUT_OF_RANGE,
                    "a " + of(form).word() + " face's rise is 0 to " + most + " of its width",
                    rise);
        } else if (rise == null && of(form) != Face.Form.FLAT) {
            contradictions.add(
                    "rise",
                    Violation.Key.MISSING,
                    "how far a " + of(form).word() + " face rises or falls, over its width",
                    null);
        }
    }
}

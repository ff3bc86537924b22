package org.seamtally.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.wire.CatalogueAnswers;
import org.seamtally.wire.ComparisonRequest;
import org.seamtally.wire.DutyRequest;
import org.seamtally.wire.FieldRule;
import org.seamtally.wire.FrameEstimateRequest;
import org.seamtally.wire.FrameRequest;
import org.seamtally.wire.Json;
import org.seamtally.wire.OtherWorkRequest;
import org.seamtally.wire.SetUpRequest;

/**
 * What the page's forms are drawn from, read off the requests: neither a field nor a range is told twice.
 *
 * @param kinds kinds of joint with their fields
 * @param frame the frame's own fields
 * @param sections parts of a request beside the frame: steel, filler, arc and so on
 * @param otherWork fields of a line of the shop's own
 * @param duty fields of what set-ups are compared under
 * @param setUp fields of a set-up that is compared
 */
record FormRules(
        List<CatalogueAnswers.KindRow> kinds,
        List<FieldRule> frame,
        List<Section> sections,
        List<FieldRule> otherWork,
        List<FieldRule> duty,
        List<FieldRule> comparison,
        List<FieldRule> setUp) {

    /** A part of a request, its fields with a dot for each part they are in. */
    record Section(String name, String description, List<FieldRule> fields) {}

    static FormRules ofRequests() {
        List<Section> sections = FieldRule.fields(FrameEstimateRequest.class)
                .filter(field -> FieldRule.part(field) != FrameRequest.class)
                .map(field -> new Section(
                        field.getName(),
                        field.getAnnotation(Schema.class).description(),
                        single(FieldRule.deep(FieldRule.part(field)))))
                .toList();
        return new FormRules(
                CatalogueAnswers.jointKinds(),
                single(FieldRule.of(FrameRequest.class)),
                sections,
                FieldRule.of(OtherWorkRequest.class),
                FieldRule.of(DutyRequest.class),
                FieldRule.of(ComparisonRequest.class).stream()
                        .filter(rule -> !rule.holds().equals("part"))
                        .filter(rule -> !rule.holds().equals("list"))
                        .toList(),
                FieldRule.deep(SetUpRequest.class));
    }

    private static List<FieldRule> single(List<FieldRule> rules) {
        return rules.stream().filter(rule -> !rule.holds().equals("list")).toList();
    }

    /** As JSON that may stand inside a script element. */
    static String json() {
        try {
            return Json.mapper().writeValueAsString(ofRequests()).replace("<", "\\u003c");
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}

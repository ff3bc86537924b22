package org.seamtally.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.seamtally.wire.ComparisonRequest;
import org.seamtally.wire.FrameEstimateRequest;
import org.seamtally.wire.GasLossRequest;
import org.seamtally.wire.Json;
import org.seamtally.wire.OneJointRequest;
import org.seamtally.wire.PriceBookRequest;
import org.seamtally.wire.QuoteRequest;
import org.seamtally.wire.SteelReviewRequest;

/** The endpoints that take a body: what it is read as, and examples that run. The OpenAPI document is made from this. */
enum RequestBodies {
    FRAME_ESTIMATES(
            "/v1/frame-estimates",
            FrameEstimateRequest.class,
            new Example("frame-estimate", "A frame with every optional part given"),
            new Example("frame-estimate-minimal", "Sizes alone: the rest is assumed, and listed")),
    FRAME_TOTALS(
            "/v1/frame-totals",
            FrameEstimateRequest.class,
            new Example("frame-estimate-minimal", "Sizes alone: the rest is assumed, and listed")),
    DEPOSITS("/v1/deposits", OneJointRequest.class, new Example("deposit", "A coped tube joint at 45 degrees")),
    ARC_TIMES("/v1/arc-times", OneJointRequest.class, new Example("arc-time", "A tab's fillet at a given current")),
    GAS_LOSSES(
            "/v1/gas-losses",
            GasLossRequest.class,
            new Example("gas-loss", "A hose behind a flowmeter at the supply"),
            new Example("gas-loss-joint", "The same with an orifice, and a joint welded with it")),
    GAS_SETUP_COMPARISONS(
            "/v1/gas-setup-comparisons",
            ComparisonRequest.class,
            new Example("gas-setup-comparison", "A wide hose, a narrow one, and an orifice at the machine")),
    PREHEATS("/v1/preheats", OneJointRequest.class, new Example("preheat", "A coped tube joint heated with propane")),
    STEEL_REVIEWS(
            "/v1/steel-reviews",
            SteelReviewRequest.class,
            new Example("steel-review", "Chromium-molybdenum tube with three fillers"),
            new Example("steel-review-analysis", "A shop's own analyses of tube and rod")),
    QUOTES("/v1/quotes", QuoteRequest.class, new Example("quote", "A gate's corners, priced by prices of its own")),
    QUOTE_REVISIONS(
            "/v1/quotes/{id}/revisions",
            QuoteRequest.class,
            new Example("quote-revised", "The same with heavier plates and a later day")),
    PRICE_BOOKS(
            "/v1/price-books/{name}", PriceBookRequest.class, new Example("price-book", "A shop's prices of a year"));

    private final String path;
    private final Class<?> request;
    private final List<Example> examples;

    RequestBodies(String path, Class<?> request, Example... examples) {
        this.path = path;
        this.request = request;
        this.examples = List.of(examples);
    }

    String path() {
        return path;
    }

    /** What the body is read as. */
    Class<?> request() {
        return request;
    }

    List<Example> examples() {
        return examples;
    }

    /** A body that is taken: a resource beside this class. */
    record Example(String name, String summary) {

        /** The body as a tree of maps, lists and values. */
        Object body() {
            String resource = "examples/" + name + ".json";
            try (InputStream in = RequestBodies.class.getResourceAsStream(resource)) {
                if (in == null) {
                    throw new IllegalStateException("no resource " + resource);
                }
                return Json.mapper().readValue(in, Object.class);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}

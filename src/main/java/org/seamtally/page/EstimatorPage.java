package org.seamtally.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;

/** The estimator's page: one document, the same for everyone; what people type stays in their browser. */
@ApplicationScoped
public class EstimatorPage {

    /**
     * What the page may load: its own files and nothing else, no script or style inside the document. Pictures may also
     * be data, as a style sheet's small marks are.
     */
    public static final String CONTENT_SECURITY_POLICY = "default-src 'none'; script-src 'self'; style-src 'self';"
            + " img-src 'self' data:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'self';"
            + " frame-ancestors 'none'";

    private final String html = Templates.estimator(new RawString(FormRules.json()), FrameExample.ALL)
            .render();

    /** The whole document. */
    public String html() {
        return html;
    }

    /** What stands in its place where nobody can log in. */
    public String off() {
        return Templates.off().render();
    }

    @CheckedTemplate(basePath = "")
    static final class Templates {

        private Templates() {}

        static native TemplateInstance off();

        static native TemplateInstance estimator(RawString rules, java.util.List<FrameExample> examples);
    }
}

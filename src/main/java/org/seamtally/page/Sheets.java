package org.seamtally.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** The templates of the printed quote. */
@CheckedTemplate(basePath = "print", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
final class Sheets {

    private Sheets() {}

    static native TemplateInstance customer(CustomerSheet sheet, Look look);

    static native TemplateInstance shopFloor(ShopFloorSheet sheet, Look look);
}

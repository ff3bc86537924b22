/** What people read: the estimator's page and the printed quote, filled from answers. */
package org.seamtally.page;

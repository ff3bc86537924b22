/** What the scripts of {@code load-tests} run: a maker of job files, and the loops that batches are measured against. */
package org.seamtally.load;

/**
 * Thousands of frames at a time: the loop over a job file, a line's fault its own; chunks of a kept batch, its states and
 * results. Plain Java: where things are kept and who hands out the work are interfaces.
 */
package org.seamtally.batch;

/**
 * Requests and answers as they are written: the strict JSON reader and writer, what each field may hold, problems as
 * data, and the one entry that turns a text into an answer or a problem.
 */
package org.seamtally.wire;

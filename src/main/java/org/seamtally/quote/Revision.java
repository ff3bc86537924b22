package org.seamtally.quote;

/**
 * A revision of a quote, unchangeable.
 *
 * @param request what was asked: JSON in UTF-8
 * @param estimate what was answered, in SI units: JSON in UTF-8
 */
public record Revision(RevisionHead head, byte[] request, byte[] estimate) {}

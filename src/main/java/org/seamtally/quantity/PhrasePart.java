package org.seamtally.quantity;

/** What a {@link Phrase} is put together from. */
public sealed interface PhrasePart permits Phrase, Phrase.Figure {}

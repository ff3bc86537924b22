/**
 * What a shop keeps of its quotes: price books with their versions, quotes with their revisions, and what moved the price
 * from one revision to another. What was asked and what was answered are kept as the texts they were; nothing that is kept
 * is ever changed.
 */
package org.seamtally.quote;

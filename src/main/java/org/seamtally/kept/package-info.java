/** What all that is kept has in common: keys that make a request count once, and what is thrown where nothing can be kept. */
package org.seamtally.kept;

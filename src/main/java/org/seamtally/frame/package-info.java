/**
 * A frame's joints put together: what was given, what was assumed instead and why, the work per joint, the roll-up, and
 * its price.
 */
package org.seamtally.frame;

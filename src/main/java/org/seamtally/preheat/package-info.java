/** What preheating a joint takes: steel in the zone, its heat content, losses, fuel or electricity, and time. */
package org.seamtally.preheat;

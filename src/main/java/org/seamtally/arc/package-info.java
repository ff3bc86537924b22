/** What the arc takes: travel speed, arc time, energy, and the filler wire that is melted off. */
package org.seamtally.arc;

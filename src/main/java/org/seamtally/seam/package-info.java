/** The weld line in space, the section of the deposit along it, and what they add up to: length, volume, throat. */
package org.seamtally.seam;

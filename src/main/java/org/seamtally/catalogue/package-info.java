/**
 * Reference data: steels, fillers, gases, fuels and tube sizes, each row with its source and how well that source is
 * known.
 */
package org.seamtally.catalogue;

/** The HTTP service: resources, problems, limits and metrics. It maps, and computes nothing. */
package org.seamtally.api;

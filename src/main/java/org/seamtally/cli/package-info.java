/** The same engine from a shell: no server, no port, no database. */
package org.seamtally.cli;

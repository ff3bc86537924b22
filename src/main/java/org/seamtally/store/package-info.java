/**
 * What is kept, in SQL: an embedded file database, or PostgreSQL where it is configured. Migrations, the choice of database
 * and the clustered task library live here. Whatever differs between the two databases stands in {@link Dialect}.
 */
package org.seamtally.store;

/** Rows kept in memory or on disk, and how a record becomes bytes. */
package org.meadowmark.core.store;

/**
 * Result tables: which columns each has, what they mean and how a value is read from a record. The
 * data dictionary is made from the same definitions.
 */
package org.meadowmark.core.write.table;

/** Writes the tables of all bays to a folder that appears whole or not at all. */
package org.meadowmark.cluster.output;

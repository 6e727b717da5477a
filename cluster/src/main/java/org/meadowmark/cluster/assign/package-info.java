/** Which bay a feature lies in, and which beds of different bays lie near each other. */
package org.meadowmark.cluster.assign;

/** The assessment of many bays on a cluster of machines. */
package org.meadowmark.cluster;

/**
 * Fifth stage: channel segments, the scars that belong to each, the evidence that boats from the
 * channel cut them, and the segments' order by a score of that evidence.
 */
package org.meadowmark.core.rank;

/** Fifth stage: channel segments, the scars that belong to each, and their order by damage rate. */
package org.meadowmark.core.rank;

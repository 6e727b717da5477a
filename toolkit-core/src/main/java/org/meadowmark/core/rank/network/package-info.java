/** How channel segments hang together. Knows segments only by position. */
package org.meadowmark.core.rank.network;

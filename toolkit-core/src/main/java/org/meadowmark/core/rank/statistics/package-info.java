/**
 * How sure it is that one channel segment is scarred more than others: rates smoothed by what other
 * segments show, clustering along the channel, and the share of false alarms. Knows segments only
 * by position; reads no survey.
 */
package org.meadowmark.core.rank.statistics;

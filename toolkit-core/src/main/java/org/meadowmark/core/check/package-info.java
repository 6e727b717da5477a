/**
 * Second stage: turns features as read into scars, beds, channels and areas, with every problem
 * listed and every repair counted.
 */
package org.meadowmark.core.check;

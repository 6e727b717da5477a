/**
 * Second stage: turns features as read into scars, beds, channels and areas, with every problem
 * listed and every repair counted.
 *
 * <p>{@link org.meadowmark.core.check.LayerChecker} looks at features one by one while they are
 * read, in the file's coordinates. {@link org.meadowmark.core.check.LayoutChecker} looks at how
 * they lie to each other; it needs metres, so it runs after the projecting stage, of which it knows
 * nothing. {@link org.meadowmark.core.check.FindingLog} collects what all stages find.
 */
package org.meadowmark.core.check;

/**
 * The choice of repairs within a budget, where the way to a site is paid once for all its repairs.
 * Knows costs and benefits only.
 */
package org.meadowmark.core.plan.choice;

/**
 * The repair plan: what planting each scar takes, costs and gains, which scars to plant within a
 * budget, in which season, where each unit goes and in which order the crew visits.
 */
package org.meadowmark.core.plan;

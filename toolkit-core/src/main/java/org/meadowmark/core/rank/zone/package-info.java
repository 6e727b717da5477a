/**
 * Which stretches of channel to mark: zones, devices, marker positions and what a zone is worth.
 */
package org.meadowmark.core.rank.zone;

/** Where planting units go, and in which order places are visited. */
package org.meadowmark.core.plan.layout;

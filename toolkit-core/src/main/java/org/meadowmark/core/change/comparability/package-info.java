/** Whether two surveys can be compared at all: how differently they were made, and what follows. */
package org.meadowmark.core.change.comparability;

/** Groups of features that depend on each other, packed into parts that are measured one by one. */
package org.meadowmark.core.partition;

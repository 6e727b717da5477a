/** The plain text summary for a terminal. */
package org.meadowmark.core.write.summary;

/** The output folder: what goes into it, and how it appears as a whole or not at all. */
package org.meadowmark.core.write.folder;

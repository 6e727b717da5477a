/** All files of a bay, as the assessment of one survey writes them, in a folder of its own. */
package org.meadowmark.cluster.folder;

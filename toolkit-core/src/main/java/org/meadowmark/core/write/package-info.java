/** Last stage: result tables, layers, charts, the summary and the run record. */
package org.meadowmark.core.write;

/** Pictures of the results, drawn without a screen. */
package org.meadowmark.core.write.chart;

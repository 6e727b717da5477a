/** Runs the stages in order and holds their results. Only this package knows all stages. */
package org.meadowmark.core.assessment;

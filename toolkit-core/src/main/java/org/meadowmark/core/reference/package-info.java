/**
 * Reference tables of the project's {@code shared} folder as records: species, scar causes,
 * severity classes, device rules and parameters, each row with its source.
 */
package org.meadowmark.core.reference;

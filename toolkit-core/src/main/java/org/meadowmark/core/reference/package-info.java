/**
 * Reference tables of the project's {@code shared} folder as records: species, scar causes,
 * severity classes, device rules, fish guilds and parameters, each row with its source.
 *
 * <p>{@link org.meadowmark.core.reference.TableLibrary} finds the files, packed or in a folder of
 * the user's; a table that breaks its rules is refused with file and line.
 */
package org.meadowmark.core.reference;

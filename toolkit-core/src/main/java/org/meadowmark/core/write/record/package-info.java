/**
 * What was run on what: the run record, digests of files, and the list of findings.
 *
 * <p>Whatever differs between two runs on the same input (times, memory, versions) is written here
 * and nowhere else.
 */
package org.meadowmark.core.write.record;

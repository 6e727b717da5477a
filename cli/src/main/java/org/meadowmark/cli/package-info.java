/** The command line: parses, wires the stages, reports progress. */
package org.meadowmark.cli;

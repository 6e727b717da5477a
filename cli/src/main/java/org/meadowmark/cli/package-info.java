/**
 * The command line: parses, wires the stages, reports progress.
 *
 * <p>Commands know the core through gateways only, so that {@code --help} loads nothing heavy and
 * tests can stand in for the core: {@link org.meadowmark.cli.Toolkit} and {@link
 * org.meadowmark.cli.SampleWriter} are the real ones. Options that several commands share are
 * mixins, worded once. Results go to standard output and everything else to standard error; {@link
 * org.meadowmark.cli.ErrorReport} turns every failure into one line and an {@link
 * org.meadowmark.cli.ExitCode}.
 */
package org.meadowmark.cli;

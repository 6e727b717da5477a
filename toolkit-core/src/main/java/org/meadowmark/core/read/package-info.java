/**
 * First stage: features of a layer as the file has them, one package a format.
 *
 * <p>Readers stream. What cannot be read is reported to the sink (one feature) or thrown (the whole
 * layer); nothing is dropped silently, and nothing is repaired here.
 */
package org.meadowmark.core.read;

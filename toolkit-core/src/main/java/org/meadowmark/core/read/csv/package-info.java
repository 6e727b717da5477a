/** Reads CSV (RFC 4180) with well-known text or a pair of coordinate columns. */
package org.meadowmark.core.read.csv;

/**
 * A proposal sheet for each zone, as a page for a browser and as a PDF, made to be read at a public
 * hearing.
 *
 * <p>One template, filled through a library that escapes every value, gives one XHTML document; the
 * browser page is that document as it is, the PDF is laid out from it. Words stand in a resource
 * bundle, numbers are set by {@link org.meadowmark.core.write.Figures}. The map and the drawings of
 * marks are made here as SVG through an XML writer that escapes, too.
 */
package org.meadowmark.core.write.proposal;

/**
 * One page of HTML a run, complete in itself: answers, tables, charts and a map that opens from
 * disk and asks no network for anything.
 *
 * <p>{@link org.meadowmark.core.write.report.Report} writes it. Features go into layers ({@code
 * ReportLayers}), geometry is simplified to a stated tolerance and packed ({@code GeometryCode}),
 * what a layer leaves out is counted and said. Whatever comes from attributes is data in the page,
 * never markup or script.
 */
package org.meadowmark.core.write.report;

/**
 * Immutable records that pass between the stages: where a feature came from, what was found wrong,
 * and the features of a survey.
 *
 * <p>Every stage may use this package; it uses none of them. JTS geometries are mutable by design
 * of their library: code that receives one from a record here must not change it.
 */
package org.meadowmark.core.model;

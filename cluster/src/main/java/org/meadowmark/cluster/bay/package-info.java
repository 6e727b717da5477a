/** The stages of an assessment of many bays: load a bay, measure its parts, merge them. */
package org.meadowmark.cluster.bay;

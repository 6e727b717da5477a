/** Invented surveys of any size, from a seed: an estuary, its beds, its channels and its scars. */
package org.meadowmark.samples;

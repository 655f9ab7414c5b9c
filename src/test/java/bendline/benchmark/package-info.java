/**
 * Measures how far what Bendline says lies from the truth: readers for exact truth, scores of a trace, the general
 * trackers we compare with, and the program that prints the accuracy table. Errors are in pixels of the picture.
 */
@NullMarked
package bendline.benchmark;

import org.jspecify.annotations.NullMarked;

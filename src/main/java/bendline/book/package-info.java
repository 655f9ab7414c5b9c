/**
 * The practice book: an embedded database with a folder of clips and one of analyses beside it. A file is in its place before
 * a row names it, rows change in transactions that hold or never happened, and nothing here deletes a clip or an analysis.
 */
@NullMarked
package bendline.book;

import org.jspecify.annotations.NullMarked;

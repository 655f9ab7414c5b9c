/**
 * Pages for a browser on this computer, on the phone beside it, or in a club. Clips are opened by a process of their own, so
 * that a file made to do harm can't take the server with it.
 */
@NullMarked
package bendline.web;

import org.jspecify.annotations.NullMarked;

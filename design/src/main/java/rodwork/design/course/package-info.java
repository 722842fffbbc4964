/** The course of a clasp's arms on the scanned tooth, and what they do there. */
@NullMarked
package rodwork.design.course;

import org.jspecify.annotations.NullMarked;

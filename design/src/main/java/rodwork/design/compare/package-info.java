/**
 * Two plans of one mouth, held beside each other: parts, measures, rules met and broken, and what a
 * bite on each base does.
 */
@NullMarked
package rodwork.design.compare;

import org.jspecify.annotations.NullMarked;

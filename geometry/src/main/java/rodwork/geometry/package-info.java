/**
 * Vectors and directions: the values that every other package of geometry shares. Nothing here
 * knows a tooth.
 */
@NullMarked
package rodwork.geometry;

import org.jspecify.annotations.NullMarked;

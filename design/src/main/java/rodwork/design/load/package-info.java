/**
 * What happens when somebody bites on a denture base: a rigid denture on springs. The stiffness of
 * tissues is known to a factor of ten at best, so nothing here is told as it stands: two choices
 * are worked through with the same draws of everything unknown, and only the ratio between them is
 * told, with its interval. Formulas and ranges: docs/load-model.md.
 */
@NullMarked
package rodwork.design.load;

import org.jspecify.annotations.NullMarked;

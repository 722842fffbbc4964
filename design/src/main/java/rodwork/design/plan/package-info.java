/**
 * The plan of a denture: an immutable value made from arch, teeth, survey, abutments, rules and
 * what a person chose, with every rule that it meets or breaks.
 */
@NullMarked
package rodwork.design.plan;

import org.jspecify.annotations.NullMarked;

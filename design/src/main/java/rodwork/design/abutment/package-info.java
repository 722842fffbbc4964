/**
 * Every likely abutment of an arch at one path: what was measured, asked and found, and what each
 * kind of clasp can do there.
 */
@NullMarked
package rodwork.design.abutment;

import org.jspecify.annotations.NullMarked;

/** Thresholds with unit, source and standing, and the findings they lead to. */
@NullMarked
package rodwork.rules;

import org.jspecify.annotations.NullMarked;

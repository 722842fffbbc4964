/**
 * The edentulous spaces of an arch on the scan: between which teeth, how long, where the crest of
 * the ridge runs, and which teeth stood there.
 */
@NullMarked
package rodwork.anatomy.space;

import org.jspecify.annotations.NullMarked;

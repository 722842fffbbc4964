/**
 * Everything known of the teeth of one arch in one value: chart, labels, teeth, spaces, class.
 *
 * <p>{@link rodwork.anatomy.dentition.Dentition#of} makes it from the arch, the labels and the
 * chart, and from nothing else; whoever plans a denture starts here.
 */
@NullMarked
package rodwork.anatomy.dentition;

import org.jspecify.annotations.NullMarked;

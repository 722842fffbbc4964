/**
 * Mouth preparation: what is cut, where, how much, in working order, and the cast with these cuts.
 *
 * <p>{@link rodwork.design.preparation.Preparer} turns a plan into a list; every cut is measured on
 * the triangles themselves, not taken from the figures that led to it, and held against the enamel
 * that may be taken. The cuts move vertices of the scan and leave its triangles as they are, so
 * that teeth, labels and chart of the scan hold for the prepared cast too.
 */
@NullMarked
package rodwork.design.preparation;

import org.jspecify.annotations.NullMarked;

/**
 * Which clasps can serve an abutment.
 *
 * <p>Families and preferences are data ({@link rodwork.design.clasp.ClaspBook}, filled from the
 * rulebook): lists of typed conditions on {@link rodwork.design.clasp.AbutmentFacts}. {@link
 * rodwork.design.clasp.ClaspJudge} holds facts against conditions, keeps every finding, and orders
 * what serves. What is not known stays so, and the judge says which unknown could change the
 * answer.
 */
@NullMarked
package rodwork.design.clasp;

import org.jspecify.annotations.NullMarked;

/**
 * Clasp arms: a beam along the real curve on the tooth, followed out of its undercut step by step.
 *
 * <p>{@link rodwork.design.arm.ArmBeam} turns a curve with its sections into the compliance of the
 * tip and the stress on the way; {@link rodwork.design.arm.Withdrawal} lets the tooth's surface
 * push the tip aside while the denture leaves along the path; {@link rodwork.design.arm.ArmForces}
 * says what comes of it, as ranges over friction and modulus.
 */
@NullMarked
package rodwork.design.arm;

import org.jspecify.annotations.NullMarked;

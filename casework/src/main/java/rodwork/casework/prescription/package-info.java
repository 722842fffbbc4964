/**
 * The written prescription: one content, as JSON and as pages.
 *
 * <p>{@link rodwork.casework.prescription.PrescriptionContent} puts together what is asked of the
 * laboratory; {@link rodwork.casework.prescription.Prescription} adds revision, hash and what
 * changed; the pages are made from that JSON alone, so no number on paper can differ from it.
 */
@NullMarked
package rodwork.casework.prescription;

import org.jspecify.annotations.NullMarked;

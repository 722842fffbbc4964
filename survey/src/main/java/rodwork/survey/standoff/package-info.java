/**
 * Stand-off: how far a straight bar, carried past what bulges above, stands away from the tissue
 * below the gingival margin; the tissue undercut alone; the vestibule.
 */
@NullMarked
package rodwork.survey.standoff;

import org.jspecify.annotations.NullMarked;

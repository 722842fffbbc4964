/**
 * What a survey says by tooth: the deepest place of each zone of a crown, and gauge marks asked for
 * by place, such as "0.50 mesiofacial".
 */
@NullMarked
package rodwork.survey.tooth;

import org.jspecify.annotations.NullMarked;

/**
 * What a person says about the teeth of one arch, as on the chart of a patient's card.
 *
 * <p>A {@link rodwork.anatomy.chart.Chart} needs nothing but the missing teeth; everything else
 * starts as "not known", which is a value of its own and never taken for yes or no. Reading and
 * writing files is the business of others.
 */
@NullMarked
package rodwork.anatomy.chart;

import org.jspecify.annotations.NullMarked;

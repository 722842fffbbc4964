/**
 * How fast Rodwork is: JMH benchmarks, the same work side by side with general-purpose libraries,
 * and the tables made of both.
 *
 * <p>Everything runs on two kinds of cast: a real scan from the shared folder ({@link
 * rodwork.benchmarks.Casts#REAL}), and casts made by {@link rodwork.benchmarks.MadeCast} in any
 * number of triangles. A measured figure is one {@link rodwork.benchmarks.Row}, whoever measured
 * it; {@link rodwork.benchmarks.Figures} makes the tables of docs/benchmarks.md of them.
 *
 * <p>No other module may use this one, so that JMH never reaches users.
 */
@NullMarked
package rodwork.benchmarks;

import org.jspecify.annotations.NullMarked;

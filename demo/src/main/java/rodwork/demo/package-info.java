/** The two demo casts: crowns, gum and base as implicit surfaces, made the same on every run. */
@NullMarked
package rodwork.demo;

import org.jspecify.annotations.NullMarked;

/**
 * What Rodwork can be asked to do, one class an operation, each a pure function of its input. The
 * command line and the server call these same operations, so that both say the same.
 */
@NullMarked
package rodwork.app.operation;

import org.jspecify.annotations.NullMarked;

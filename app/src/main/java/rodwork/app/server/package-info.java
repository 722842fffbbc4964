/**
 * The HTTP and WebSocket server behind the bench, as docs/protocol.md says it. It answers this
 * machine alone unless told otherwise, and nobody without the token.
 */
@NullMarked
package rodwork.app.server;

import org.jspecify.annotations.NullMarked;

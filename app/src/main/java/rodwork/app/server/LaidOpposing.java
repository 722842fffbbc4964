package rodwork.app.server;

import rodwork.app.operation.OpposingScan;

/**
 * An opposing scan as it lies over a cast on the shelf.
 *
 * @param id of the open cast that it is
 */
record LaidOpposing(String id, OpposingScan scan) {}

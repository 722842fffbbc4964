package rodwork.app.server;

/**
 * What went wrong, as the browser is told.
 *
 * @param code stable code of the refusal
 * @param message what is wrong
 * @param advice what to do next
 */
record Problem(String code, String message, String advice) {}

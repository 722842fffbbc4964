package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;

/**
 * What went wrong, as the browser is told.
 *
 * @param code stable code of the refusal
 * @param message what is wrong
 * @param advice what to do next
 * @param pieces the message in pieces, for who shows tooth numbers otherwise
 */
record Problem(String code, String message, String advice, JsonNode pieces) {}

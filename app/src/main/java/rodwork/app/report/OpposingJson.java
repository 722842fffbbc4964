package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.occlusion.Bite;
import rodwork.anatomy.occlusion.ToothRoom;
import rodwork.app.operation.OpposingScan;

/** The opposing scan and the room to it, as JSON (in docs/schema) and as a table. */
public final class OpposingJson {
  private OpposingJson() {}

  /** The member {@code opposing} of a report. */
  public static ObjectNode of(OpposingScan opposing) {
    ObjectNode json = Json.object();
    json.put("file", opposing.name());
    Json.put(json, "coveredShare", opposing.covered());
    Bite bite = opposing.bite();
    if (bite == null) {
      json.putNull("bite");
    } else {
      ObjectNode laid = json.putObject("bite");
      Json.put(laid, "onCastShare", bite.onCast().share());
      Json.put(laid, "onOpposingShare", bite.onOpposing().share());
      Json.put(laid, "explainedShare", bite.explained());
      Json.put(laid, "onCastRmsMm", bite.onCast().rmsMm());
      Json.put(laid, "onOpposingRmsMm", bite.onOpposing().rmsMm());
    }
    return json;
  }

  /** What reports say of the space over teeth, one row each. */
  public static ArrayNode rooms(List<ToothRoom> rooms) {
    ArrayNode array = Json.array();
    for (ToothRoom room : rooms) {
      ObjectNode one = array.addObject();
      one.put("tooth", room.tooth().fdi());
      Json.put(one, "leastMm", room.leastMm());
      one.set("at", Json.point(room.at()));
      Json.put(one, "mesialMm", room.mesialMm());
      Json.put(one, "middleMm", room.middleMm());
      Json.put(one, "distalMm", room.distalMm());
    }
    return array;
  }

  /** One line that says how the scan lies, and with teeth a line each. */
  public static List<String> table(
      OpposingScan opposing, List<ToothRoom> rooms, Notation notation) {
    List<String> lines = new ArrayList<>();
    Bite bite = opposing.bite();
    String how =
        bite == null
            ? "in the frame of the cast"
            : String.format(
                Locale.ROOT,
                "laid by the bite scan, which lies within %.2f mm on the cast and %.2f mm on it"
                    + " (root mean square)",
                bite.onCast().rmsMm(),
                bite.onOpposing().rmsMm());
    lines.add(
        String.format(
            Locale.ROOT,
            "Opposing %s, %s; over %.0f %% of what looks to it.",
            opposing.name(),
            how,
            100 * opposing.covered()));
    if (!rooms.isEmpty()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%-6s %8s %8s %8s  %s",
              "tooth",
              "mesial",
              "middle",
              "distal",
              "least room to it [mm]; – not known; below 0 the scans run into each other"));
      for (ToothRoom room : rooms) {
        lines.add(
            String.format(
                Locale.ROOT,
                "%-6s %8s %8s %8s",
                room.tooth().in(notation),
                mm(room.mesialMm()),
                mm(room.middleMm()),
                mm(room.distalMm())));
      }
    }
    return lines;
  }

  private static String mm(double room) {
    return Double.isNaN(room) ? "–" : String.format(Locale.ROOT, "%.1f", room);
  }
}

package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.report.Json;
import rodwork.app.report.SurveyJson;
import rodwork.app.report.Words;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.GaugeMark;
import rodwork.survey.SurveyFigures;
import rodwork.survey.SurveyLine;
import rodwork.survey.Tilt;

/**
 * The binary survey frames of docs/protocol.md, made in one buffer that is used again: fresh memory
 * of this size costs more than filling it. Not for several threads.
 */
final class SurveyFrame {
  private static final int MAGIC = 0x31535752;

  private ByteBuffer buffer = ByteBuffer.allocate(0);

  /**
   * Fills the buffer with one survey; what it held before is gone.
   *
   * @param seq the browser's own count
   * @return the frame, ready to be sent
   */
  ByteBuffer whole(long seq, SurveyedCast surveyed, Watch watch) {
    byte[] flags = surveyed.survey().copyOfFlags(watch);
    List<Vec3> points = new ArrayList<>();
    ObjectNode head = head(seq, surveyed, true, points);
    figures(head, surveyed, watch);
    return filled(head, surveyed.survey().copyOfDepths(), flags, points);
  }

  /**
   * Fills the buffer with the depths alone: what flags, lines and figures cost stays unspent.
   *
   * @param exact whether the depths are those of the whole cast and not of a thinned one
   */
  ByteBuffer field(long seq, SurveyedCast surveyed, boolean exact) {
    ObjectNode head = head(seq, surveyed, exact, new ArrayList<>());
    return filled(head, surveyed.survey().copyOfDepths(), new byte[0], List.of());
  }

  private ByteBuffer filled(ObjectNode head, float[] depths, byte[] flags, List<Vec3> points) {
    head.put("vertices", depths.length);
    head.put("flags", flags.length);
    head.put("points", points.size());
    byte[] json = padded(Json.compact(head).getBytes(StandardCharsets.UTF_8));
    int padding = -flags.length & 3;
    int size = 8 + json.length + 4 * depths.length + flags.length + padding + 12 * points.size();
    if (buffer.capacity() < size) {
      buffer = ByteBuffer.allocate(size + size / 8).order(ByteOrder.LITTLE_ENDIAN);
    }
    buffer.clear();
    buffer.putInt(MAGIC).putInt(json.length).put(json);
    buffer.asFloatBuffer().put(depths);
    buffer.position(buffer.position() + 4 * depths.length);
    buffer.put(flags);
    for (int i = 0; i < padding; i++) {
      buffer.put((byte) 0);
    }
    for (Vec3 p : points) {
      buffer.putFloat((float) p.x()).putFloat((float) p.y()).putFloat((float) p.z());
    }
    return buffer.flip();
  }

  private static ObjectNode head(
      long seq, SurveyedCast surveyed, boolean exact, List<Vec3> points) {
    ObjectNode head = Json.object();
    head.put("seq", seq);
    ArrayNode tilt = head.putArray("tilt");
    Tilt at = surveyed.path().tilt();
    if (at != null) {
      tilt.add(at.anteriorDeg()).add(at.rightDeg());
    }
    head.set("axis", Json.direction(surveyed.path().axis()));
    Json.put(head, "totalTiltDeg", SurveyJson.totalTiltDeg(surveyed));
    Json.put(head, "millis", surveyed.millis());
    head.put("exact", exact);
    ArrayNode curves = head.putArray("curves");
    for (SurveyLine line : surveyed.survey().lines()) {
      curve(
          curves.addObject(),
          Words.kind(line),
          null,
          line.points(),
          line.closed(),
          line.lengthMm(),
          points);
    }
    for (GaugeMark mark : surveyed.survey().marks()) {
      curve(
          curves.addObject(),
          "mark",
          mark.gaugeMm(),
          mark.points(),
          mark.closed(),
          mark.lengthMm(),
          points);
    }
    return head;
  }

  private static void figures(ObjectNode head, SurveyedCast surveyed, Watch watch) {
    head.put("hiddenLines", surveyed.survey().hiddenLines());
    SurveyFigures figures = surveyed.survey().figures(watch);
    Json.put(head, "undercutAreaMm2", figures.areaMm2());
    Json.put(head, "undercutVolumeMm3", figures.volumeMm3());
    head.set("deepest", SurveyJson.deepest(figures));
    head.set("notes", Json.texts(surveyed.notes()));
  }

  private static void curve(
      ObjectNode json,
      String kind,
      @Nullable Double gaugeMm,
      List<Vec3> curve,
      boolean closed,
      double lengthMm,
      List<Vec3> points) {
    json.put("kind", kind);
    json.put("gaugeMm", gaugeMm);
    json.put("from", points.size());
    json.put("count", curve.size());
    json.put("closed", closed);
    Json.put(json, "lengthMm", lengthMm);
    points.addAll(curve);
  }

  private static byte[] padded(byte[] json) {
    byte[] padded = Arrays.copyOf(json, (json.length + 3) & ~3);
    Arrays.fill(padded, json.length, padded.length, (byte) ' ');
    return padded;
  }
}

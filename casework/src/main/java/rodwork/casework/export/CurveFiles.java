package rodwork.casework.export;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import rodwork.geometry.Vec3;

/** Curves as text of two formats that most programs read. */
final class CurveFiles {
  private CurveFiles() {}

  /**
   * DXF of release 12: 3D polylines, a layer for each name (Autodesk, DXF Reference, POLYLINE flags
   * 8 and 1).
   */
  static String dxf(List<NamedCurve> curves) {
    StringBuilder text = new StringBuilder();
    group(text, 0, "SECTION");
    group(text, 2, "HEADER");
    group(text, 9, "$ACADVER");
    group(text, 1, "AC1009");
    group(text, 0, "ENDSEC");
    group(text, 0, "SECTION");
    group(text, 2, "TABLES");
    Map<String, Integer> layers = new TreeMap<>();
    curves.forEach(curve -> layers.put(curve.name(), curve.kind().index()));
    group(text, 0, "TABLE");
    group(text, 2, "LAYER");
    group(text, 70, Integer.toString(layers.size()));
    layers.forEach(
        (name, index) -> {
          group(text, 0, "LAYER");
          group(text, 2, name);
          group(text, 70, "0");
          group(text, 62, index.toString());
          group(text, 6, "CONTINUOUS");
        });
    group(text, 0, "ENDTAB");
    group(text, 0, "ENDSEC");
    group(text, 0, "SECTION");
    group(text, 2, "ENTITIES");
    for (NamedCurve curve : curves) {
      group(text, 0, "POLYLINE");
      group(text, 8, curve.name());
      group(text, 66, "1");
      point(text, Vec3.ZERO);
      group(text, 70, curve.closed() ? "9" : "8");
      for (Vec3 p : curve.points()) {
        group(text, 0, "VERTEX");
        group(text, 8, curve.name());
        point(text, p);
        group(text, 70, "32");
      }
      group(text, 0, "SEQEND");
      group(text, 8, curve.name());
    }
    group(text, 0, "ENDSEC");
    group(text, 0, "EOF");
    return text.toString();
  }

  private static void point(StringBuilder text, Vec3 p) {
    group(text, 10, number(p.x()));
    group(text, 20, number(p.y()));
    group(text, 30, number(p.z()));
  }

  private static void group(StringBuilder text, int code, String value) {
    text.append(String.format(Locale.ROOT, "%3d\n%s\n", code, value));
  }

  /** Wavefront OBJ: vertices and {@code l} elements, an object for each curve. */
  static String obj(List<NamedCurve> curves) {
    StringBuilder text = new StringBuilder("# Rodwork, lengths in mm, path frame\n");
    int next = 1;
    int count = 0;
    for (NamedCurve curve : curves) {
      text.append("o ").append(curve.name()).append('_').append(++count).append('\n');
      for (Vec3 p : curve.points()) {
        text.append(String.format("v %s %s %s%n", number(p.x()), number(p.y()), number(p.z())));
      }
      text.append('l');
      for (int i = 0; i < curve.points().size(); i++) {
        text.append(' ').append(next + i);
      }
      text.append(curve.closed() ? " " + next : "").append('\n');
      next += curve.points().size();
    }
    return text.toString().replace("\r\n", "\n");
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.5f", value);
  }
}

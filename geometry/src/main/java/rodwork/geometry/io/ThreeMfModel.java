package rodwork.geometry.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;

/** One model part of a 3MF: its objects by their id, and what of them is built where. */
record ThreeMfModel(LengthUnit unit, Map<String, Solid> objects, List<Placed> build) {
  private static final String PRODUCTION =
      "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";

  /** Extensions that a file may require and that change no shape. */
  private static final Set<String> KNOWN_EXTENSIONS =
      Set.of(
          PRODUCTION,
          "http://schemas.microsoft.com/3dmanufacturing/core/2015/02",
          "http://schemas.microsoft.com/3dmanufacturing/material/2015/02",
          "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07");

  /** An object that is put somewhere; path: the part that holds it, empty for the same part. */
  record Placed(String id, String path, Placement placement) {}

  /** A body of its own triangles, or one composed of others. */
  static final class Solid {
    private final Doubles xyz;
    private final Ints corners;
    private final List<Placed> components = new ArrayList<>();

    Solid(Budget budget) {
      xyz = new Doubles(budget, 0);
      corners = new Ints(budget, 0);
    }

    Doubles xyz() {
      return xyz;
    }

    Ints corners() {
      return corners;
    }

    List<Placed> components() {
      return components;
    }
  }

  /** The ids of the objects that are no component of another, in the file's order. */
  Set<String> outermost() {
    Set<String> ids = new LinkedHashSet<>(objects.keySet());
    for (Solid solid : objects.values()) {
      solid.components().forEach(component -> ids.remove(component.id()));
    }
    return ids;
  }

  /** Reads the XML of one part. */
  static final class Parser {
    private static final int CHECK_EVERY = 1 << 14;

    private final XMLStreamReader xml;
    private final MeshCollector mesh;
    private final Watch watch;
    private final Map<String, Solid> objects = new LinkedHashMap<>();
    private final List<Placed> build = new ArrayList<>();
    private byte[] scratch = new byte[64];
    private LengthUnit unit = LengthUnit.MILLIMETRE;
    private @Nullable Solid solid;

    /**
     * @param mesh gives name and budget for all that is read
     */
    Parser(XMLStreamReader xml, MeshCollector mesh, Watch watch) {
      this.xml = xml;
      this.mesh = mesh;
      this.watch = watch;
    }

    ThreeMfModel model() throws XMLStreamException {
      int depth = 0;
      for (long n = 0; xml.hasNext(); n++) {
        if (n % CHECK_EVERY == 0) {
          watch.check();
        }
        switch (xml.next()) {
          case XMLStreamConstants.START_ELEMENT -> {
            if (depth++ == 0 && !xml.getLocalName().equals("model")) {
              throw bad("the part begins with <" + xml.getLocalName() + ">, not with <model>");
            }
            start(xml.getLocalName());
          }
          case XMLStreamConstants.END_ELEMENT -> {
            depth--;
            if (xml.getLocalName().equals("object")) {
              end();
            }
          }
          default -> {}
        }
      }
      return new ThreeMfModel(unit, objects, List.copyOf(build));
    }

    private void start(String element) {
      switch (element) {
        case "model" -> model(xml.getAttributeValue(null, "unit"));
        case "object" -> {
          solid = new Solid(mesh.budget);
          if (objects.put(text("id"), solid) != null) {
            throw bad("object " + text("id") + " is there twice");
          }
        }
        case "vertex" -> inObject().xyz.add(number("x"), number("y"), number("z"));
        case "triangle" -> inObject().corners.add(index("v1"), index("v2"), index("v3"));
        case "component" -> inObject().components.add(placed());
        case "item" -> build.add(placed());
        default -> {}
      }
    }

    private void model(@Nullable String unitName) {
      unit =
          switch (unitName == null ? "millimeter" : unitName) {
            case "micron" -> LengthUnit.MICRON;
            case "millimeter" -> LengthUnit.MILLIMETRE;
            case "centimeter" -> LengthUnit.CENTIMETRE;
            case "inch" -> LengthUnit.INCH;
            case "foot" -> LengthUnit.FOOT;
            case "meter" -> LengthUnit.METRE;
            default -> throw bad("the unit " + unitName + " is none of the standard's");
          };
      String required = xml.getAttributeValue(null, "requiredextensions");
      if (required == null) {
        return;
      }
      for (String prefix : required.strip().split("\\s+", -1)) {
        String namespace = prefix.isEmpty() ? PRODUCTION : xml.getNamespaceURI(prefix);
        if (namespace == null || !KNOWN_EXTENSIONS.contains(namespace)) {
          throw IoProblem.THREE_MF_EXTENSION.refusal(
              mesh.name, namespace == null ? prefix : namespace);
        }
      }
    }

    private void end() {
      Solid ended = inObject();
      int vertices = ended.xyz.size() / 3;
      for (int i = 0; i < ended.corners.size(); i++) {
        if (ended.corners.get(i) >= vertices) {
          throw IoProblem.NO_SUCH_VERTEX.refusal(
              mesh.name, i / 3 + 1, ended.corners.get(i), vertices);
        }
      }
      solid = null;
    }

    private Placed placed() {
      String path = xml.getAttributeValue(PRODUCTION, "path");
      return new Placed(text("objectid"), path == null ? "" : path, placement());
    }

    private Placement placement() {
      String transform = xml.getAttributeValue(null, "transform");
      if (transform == null) {
        return Placement.NONE;
      }
      String[] words = transform.strip().split("\\s+", 13);
      if (words.length != 12) {
        throw bad("a transform has not 12 numbers: " + transform);
      }
      double[] columns = new double[12];
      for (int i = 0; i < 12; i++) {
        columns[i] = parse(words[i]);
      }
      return Placement.ofColumns(columns);
    }

    private Solid inObject() {
      if (solid == null) {
        throw bad("<" + xml.getLocalName() + "> stands outside an object");
      }
      return solid;
    }

    private String text(String attribute) {
      String value = xml.getAttributeValue(null, attribute);
      if (value == null) {
        throw bad("<" + xml.getLocalName() + "> has no " + attribute);
      }
      return value;
    }

    private double number(String attribute) {
      return parse(text(attribute));
    }

    private double parse(String word) {
      int length = word.length();
      if (length > scratch.length) {
        scratch = new byte[length];
      }
      for (int i = 0; i < length; i++) {
        scratch[i] = (byte) Math.min(word.charAt(i), 0x7F);
      }
      try {
        return Decimal.parse(scratch, length);
      } catch (NumberFormatException e) {
        throw bad(word + " is no number");
      }
    }

    private int index(String attribute) {
      String word = text(attribute);
      try {
        int index = Integer.parseInt(word);
        if (index >= 0) {
          return index;
        }
      } catch (NumberFormatException e) {
        // told below
      }
      throw bad(attribute + " = " + word + " is no vertex number");
    }

    private Refusal bad(String what) {
      int line = xml.getLocation().getLineNumber();
      return IoProblem.THREE_MF_STRUCTURE.refusal(
          mesh.name, String.format(Locale.ROOT, "line %,d: %s", line, what));
    }
  }
}

package rodwork.geometry.io;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import rodwork.geometry.Refusal;

/**
 * The meshes of a glTF's scene, each where its nodes place it, as one surface in metres.
 *
 * <p>Triangles, strips and fans are taken; points and lines are left out with a note, and so are
 * poses by skins and morph targets. Vertices that primitives of one node share stay shared.
 */
final class GltfScene {
  private static final int TRIANGLES = 4;
  private static final int STRIP = 5;
  private static final int FAN = 6;

  private record Visit(int node, Placement outer) {}

  private final JsonNode root;
  private final List<byte[]> buffers;
  private final Input in;
  private final MeshCollector mesh;
  private final Set<Integer> visited = new HashSet<>();
  private long pointsOrLines;
  private boolean posed;

  GltfScene(JsonNode root, List<byte[]> buffers, Input in, Format format, Budget budget) {
    this.root = root;
    this.buffers = buffers;
    this.in = in;
    this.mesh = new MeshCollector(in.name(), format, budget, 3 * 1024, 3 * 2048);
    mesh.solids = 0;
    mesh.declaredUnit = Optional.of(LengthUnit.METRE);
  }

  RawMesh read() {
    String version = root.path("asset").path("version").asText();
    if (!version.startsWith("2.")) {
      throw IoProblem.GLTF_VERSION.refusal(in.name(), version);
    }
    for (JsonNode extension : root.path("extensionsRequired")) {
      if (!changesNoShape(extension.asText())) {
        throw IoProblem.GLTF_EXTENSION.refusal(in.name(), extension.asText());
      }
    }
    Deque<Visit> open = new ArrayDeque<>();
    roots().forEach(node -> open.add(new Visit(node, Placement.NONE)));
    while (!open.isEmpty()) {
      visit(open.poll(), open);
    }
    if (pointsOrLines > 0) {
      mesh.note("{count} parts made of points or lines were left out.", pointsOrLines);
    }
    if (posed) {
      mesh.note("Poses by skins or morph targets were left out; the rest shape was taken.");
    }
    return mesh.finish();
  }

  private static boolean changesNoShape(String extension) {
    return extension.equals("KHR_mesh_quantization")
        || extension.startsWith("KHR_materials_")
        || extension.startsWith("KHR_texture_")
        || extension.startsWith("EXT_texture_")
        || extension.startsWith("KHR_lights_");
  }

  /** The first nodes of the scene to show; without scenes all nodes that are nobody's child. */
  private List<Integer> roots() {
    JsonNode scenes = root.path("scenes");
    if (scenes.isArray() && !scenes.isEmpty()) {
      JsonNode scene = scenes.path(index(root.path("scene"), 0, "scene"));
      if (!scene.isObject()) {
        throw bad("the scene to show is not there");
      }
      return scene.path("nodes").valueStream().map(node -> index(node, -1, "scene.nodes")).toList();
    }
    Set<Integer> children = new HashSet<>();
    for (JsonNode node : root.path("nodes")) {
      node.path("children").forEach(child -> children.add(index(child, -1, "children")));
    }
    return IntStream.range(0, root.path("nodes").size())
        .filter(node -> !children.contains(node))
        .boxed()
        .toList();
  }

  private void visit(Visit visit, Deque<Visit> open) {
    in.watch().check();
    JsonNode node = root.path("nodes").path(visit.node);
    if (!node.isObject()) {
      throw bad("node " + visit.node + " is not there");
    }
    if (!visited.add(visit.node)) {
      throw bad("node " + visit.node + " is reached twice");
    }
    Placement all = visit.outer.after(placement(node, visit.node));
    if (node.has("mesh")) {
      add(index(node.path("mesh"), -1, "mesh"), all);
      posed |= node.has("skin");
    }
    for (JsonNode child : node.path("children")) {
      open.add(new Visit(index(child, -1, "children"), all));
    }
  }

  private Placement placement(JsonNode node, int number) {
    if (node.has("matrix")) {
      double[] m = numbers(node.path("matrix"), 16, new double[16], number);
      return Placement.ofColumns(
          new double[] {
            m[0], m[1], m[2], m[4], m[5], m[6], m[8], m[9], m[10], m[12], m[13], m[14]
          });
    }
    if (!node.has("translation") && !node.has("rotation") && !node.has("scale")) {
      return Placement.NONE;
    }
    double[] turn = numbers(node.path("rotation"), 4, new double[] {0, 0, 0, 1}, number);
    double length =
        Math.sqrt(turn[0] * turn[0] + turn[1] * turn[1] + turn[2] * turn[2] + turn[3] * turn[3]);
    if (!(length > 0.5 && length < 2)) {
      throw bad("the rotation of node " + number + " is no unit quaternion");
    }
    for (int i = 0; i < 4; i++) {
      turn[i] /= length; // floats written with six digits are off by a millionth
    }
    return Placement.of(
        numbers(node.path("translation"), 3, new double[3], number),
        turn,
        numbers(node.path("scale"), 3, new double[] {1, 1, 1}, number));
  }

  private double[] numbers(JsonNode array, int count, double[] ifMissing, int node) {
    if (array.isMissingNode()) {
      return ifMissing;
    }
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      if (array.size() != count || !array.path(i).isNumber()) {
        throw bad("node " + node + " is placed by other than " + count + " numbers");
      }
      values[i] = array.path(i).doubleValue();
    }
    return values;
  }

  private void add(int number, Placement placement) {
    JsonNode primitives = root.path("meshes").path(number).path("primitives");
    if (!primitives.isArray()) {
      throw bad("mesh " + number + " is not there");
    }
    mesh.solids++;
    Map<Integer, Integer> firstVertex = new HashMap<>();
    for (JsonNode primitive : primitives) {
      posed |= primitive.has("targets");
      int mode = index(primitive.path("mode"), TRIANGLES, "mode");
      if (mode < TRIANGLES || mode > FAN) {
        pointsOrLines++;
        continue;
      }
      if (primitive.path("extensions").has("KHR_draco_mesh_compression")) {
        throw IoProblem.GLTF_EXTENSION.refusal(in.name(), "KHR_draco_mesh_compression");
      }
      int positions = index(primitive.path("attributes").path("POSITION"), -1, "POSITION");
      GltfAccessor accessor = new GltfAccessor(in.name(), root, buffers, positions, "VEC3");
      int base = firstVertex.computeIfAbsent(positions, a -> addVertices(accessor, placement));
      Doubles order =
          primitive.has("indices")
              ? new GltfAccessor(
                      in.name(),
                      root,
                      buffers,
                      index(primitive.path("indices"), -1, "indices"),
                      "SCALAR")
                  .values(mesh.budget)
              : counting(accessor.count());
      addTriangles(order, mode, base, accessor.count(), placement.mirrors());
    }
  }

  private int addVertices(GltfAccessor accessor, Placement placement) {
    int base = mesh.vertexCount();
    Doubles xyz = accessor.values(mesh.budget);
    for (int i = 0; i < xyz.size(); i += 3) {
      placement.place(xyz.get(i), xyz.get(i + 1), xyz.get(i + 2), mesh.xyz);
    }
    xyz.release();
    return base;
  }

  private Doubles counting(long count) {
    Doubles order = new Doubles(mesh.budget, 0);
    for (long i = 0; i < count; i++) {
      order.add((double) i);
    }
    return order;
  }

  private void addTriangles(Doubles order, int mode, int base, long vertices, boolean mirrored) {
    int n = order.size();
    for (int i = 0; i < n; i++) {
      double vertex = order.get(i);
      if (!(vertex >= 0 && vertex < vertices && vertex == Math.rint(vertex))) {
        throw IoProblem.NO_SUCH_VERTEX.refusal(
            in.name(), mesh.faces + i / 3 + 1, (long) vertex, vertices);
      }
    }
    if (mode == TRIANGLES && n % 3 != 0) {
      throw bad("a list of triangles has " + n + " corners, which is no multiple of 3");
    }
    for (int i = 0; i + 2 < n; i += mode == TRIANGLES ? 3 : 1) {
      int a = base + (int) order.get(mode == FAN ? 0 : i);
      int b = base + (int) order.get(i + 1);
      int c = base + (int) order.get(i + 2);
      boolean turn = mirrored ^ (mode == STRIP && i % 2 == 1);
      mesh.triangle(a, turn ? c : b, turn ? b : c);
    }
    order.release();
  }

  /** A number of something, from 0. */
  private int index(JsonNode value, int ifMissing, String field) {
    if (value.isMissingNode() && ifMissing >= 0) {
      return ifMissing;
    }
    if (!value.isNumber() || value.doubleValue() != value.asInt() || value.asInt() < 0) {
      throw bad(field + " is no number of anything");
    }
    return value.asInt();
  }

  private Refusal bad(String what) {
    return IoProblem.GLTF_STRUCTURE.refusal(in.name(), what);
  }
}

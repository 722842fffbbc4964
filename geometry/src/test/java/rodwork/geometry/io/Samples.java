package rodwork.geometry.io;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import rodwork.geometry.Watch;

/** One small valid file of each format, written out by hand: the same tetrahedron in all. */
final class Samples {
  static final double[] XYZ = {0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10.5};
  static final int[] CORNERS = {0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3};

  private Samples() {}

  static RawMesh read(byte[] content) {
    return MeshFiles.read(content, "sample", Watch.NONE);
  }

  static RawMesh read(String content) {
    return read(bytes(content));
  }

  /**
   * The corner coordinates of all triangles in order, nine numbers each: the same in any format.
   */
  static double[] soup(RawMesh mesh) {
    double[] soup = new double[9 * mesh.triangleCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        soup[9 * t + 3 * k] = mesh.x(v);
        soup[9 * t + 3 * k + 1] = mesh.y(v);
        soup[9 * t + 3 * k + 2] = mesh.z(v);
      }
    }
    return soup;
  }

  static double[] tetrahedronSoup() {
    return soup(RawMesh.of(XYZ, CORNERS, FileFacts.plain("", Format.PLY, true, 4)));
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Every kind of file that is read, by a name that tells it. */
  static Map<String, byte[]> all() {
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put("stl", stl());
    all.put("stl-text", bytes(stlText()));
    all.put("ply-text", bytes(plyText()));
    all.put("ply-little", ply(ByteOrder.LITTLE_ENDIAN));
    all.put("ply-big", ply(ByteOrder.BIG_ENDIAN));
    all.put("obj", bytes(obj()));
    all.put("off", bytes(off()));
    all.put("3mf", threeMf());
    all.put("gltf", bytes(gltf()));
    all.put("glb", glb());
    all.put("stl-gzip", gzip(stl()));
    all.put("ply-zip", zip("cast/scan.ply", bytes(plyText())));
    return all;
  }

  static byte[] stl() {
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * 4).order(ByteOrder.LITTLE_ENDIAN);
    out.position(80).putInt(4);
    for (int t = 0; t < 4; t++) {
      out.putFloat(0).putFloat(0).putFloat(0);
      for (int k = 0; k < 3; k++) {
        for (int c = 0; c < 3; c++) {
          out.putFloat((float) XYZ[3 * CORNERS[3 * t + k] + c]);
        }
      }
      out.putShort((short) 0);
    }
    return out.array();
  }

  static String stlText() {
    StringBuilder text = new StringBuilder("solid cast of today\n");
    for (int t = 0; t < 4; t++) {
      text.append(" facet normal 0 0 1\n  outer loop\n");
      for (int k = 0; k < 3; k++) {
        int v = 3 * CORNERS[3 * t + k];
        text.append("   vertex ").append(XYZ[v]).append(' ').append(XYZ[v + 1]);
        text.append(' ').append(XYZ[v + 2]).append('\n');
      }
      text.append("  endloop\n endfacet\n");
    }
    return text.append("endsolid cast of today\n").toString();
  }

  static String plyText() {
    return """
        ply
        format ascii 1.0
        comment a tetrahedron
        element vertex 4
        property float x
        property float y
        property float z
        element face 4
        property list uchar int vertex_indices
        end_header
        0 0 0
        10 0 0
        0 10 0
        0 0 10.5
        3 0 2 1
        3 0 1 3
        3 0 3 2
        3 1 2 3
        """;
  }

  /** With odd types, an extra property and an extra list, faces with colours, z before x. */
  static byte[] ply(ByteOrder order) {
    String name = order == ByteOrder.LITTLE_ENDIAN ? "little" : "big";
    byte[] head =
        bytes(
            """
            ply
            format binary_%s_endian 1.0
            element vertex 4
            property double z
            property short quality
            property float x
            property list uchar ushort extra
            property int16 y
            property uchar red
            property uchar green
            property uchar blue
            element face 4
            property uchar red
            property uchar green
            property uchar blue
            property list uint uint vertex_index
            property float weight
            end_header
            """
                .formatted(name));
    ByteBuffer out = ByteBuffer.allocate(1000).order(order);
    out.put(head);
    for (int v = 0; v < 4; v++) {
      out.putDouble(XYZ[3 * v + 2]).putShort((short) -7).putFloat((float) XYZ[3 * v]);
      out.put((byte) 2).putShort((short) 1).putShort((short) 2);
      out.putShort((short) XYZ[3 * v + 1]);
      out.put((byte) 255).put((byte) (10 * v)).put((byte) 0);
    }
    for (int t = 0; t < 4; t++) {
      out.put((byte) 1).put((byte) 2).put((byte) t);
      out.putInt(3);
      for (int k = 0; k < 3; k++) {
        out.putInt(CORNERS[3 * t + k]);
      }
      out.putFloat(0.5f);
    }
    return java.util.Arrays.copyOf(out.array(), out.position());
  }

  static String obj() {
    return """
        # a tetrahedron
        mtllib none.mtl
        o cast
        v 0 0 0
        v 10 0 0
        v 0 10 0
        vt 0 0
        vn 0 0 1
        v 0 0 10.5
        g gum
        usemtl pink
        f 1 3/1 2//1
        f -4 -3 -1
        s off
        f 1/1/1 4/1/1 3/1/1
        f 2 3 \\
        4
        """;
  }

  static String off() {
    return """
        OFF
        # a tetrahedron
        4 4 6

        0 0 0
        10 0 0
        0 10 0
        0 0 10.5
        3 0 2 1
        3 0 1 3
        3 0 3 2
        3 1 2 3
        """;
  }

  static String threeMfModel() {
    return """
        <?xml version="1.0" encoding="UTF-8"?>
        <model unit="millimeter" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
        <resources><object id="7" type="model"><mesh>
        <vertices><vertex x="0" y="0" z="0"/><vertex x="10" y="0" z="0"/>
        <vertex x="0" y="10" z="0"/><vertex x="0" y="0" z="10.5"/></vertices>
        <triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/>
        <triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles>
        </mesh></object></resources>
        <build><item objectid="7"/></build></model>
        """;
  }

  static byte[] threeMf() {
    return threeMf(threeMfModel());
  }

  static byte[] threeMf(String model) {
    return zip(
        "_rels/.rels",
        bytes(
            """
            <?xml version="1.0"?>
            <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
            <Relationship Id="r" Target="/3D/3dmodel.model"
             Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
            </Relationships>
            """),
        "3D/3dmodel.model",
        bytes(model));
  }

  /** Positions as floats, then corners as shorts. */
  static byte[] gltfBuffer() {
    ByteBuffer out = ByteBuffer.allocate(48 + 24).order(ByteOrder.LITTLE_ENDIAN);
    for (double c : XYZ) {
      out.putFloat((float) c);
    }
    for (int corner : CORNERS) {
      out.putShort((short) corner);
    }
    return out.array();
  }

  static String gltfJson(String uri) {
    return """
    {"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],
     "nodes":[{"mesh":0}],
     "meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1}]}],
     "accessors":[{"bufferView":0,"componentType":5126,"count":4,"type":"VEC3"},
      {"bufferView":1,"componentType":5123,"count":12,"type":"SCALAR"}],
     "bufferViews":[{"buffer":0,"byteLength":48},{"buffer":0,"byteOffset":48,"byteLength":24}],
     "buffers":[{"byteLength":72%s}]}
    """
        .formatted(uri);
  }

  static String gltf() {
    String data = Base64.getEncoder().encodeToString(gltfBuffer());
    return gltfJson(",\"uri\":\"data:application/octet-stream;base64," + data + "\"");
  }

  static byte[] glb() {
    return glb(gltfJson(""), gltfBuffer());
  }

  static byte[] glb(String json, byte[] binary) {
    String padded = json + " ".repeat((4 - json.length() % 4) % 4);
    int total = 12 + 8 + padded.length() + 8 + binary.length;
    ByteBuffer out = ByteBuffer.allocate(total).order(ByteOrder.LITTLE_ENDIAN);
    out.put(bytes("glTF")).putInt(2).putInt(total);
    out.putInt(padded.length()).put(bytes("JSON")).put(bytes(padded));
    out.putInt(binary.length).put(bytes("BIN\0")).put(binary);
    return out.array();
  }

  static byte[] gzip(byte[] content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** A zip of files, given as name, content, name, content, ... */
  static byte[] zip(Object... files) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (int i = 0; i < files.length; i += 2) {
        zip.putNextEntry(new ZipEntry((String) files[i]));
        zip.write((byte[]) files[i + 1]);
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** The first part of a file. */
  static byte[] cut(byte[] content, int length) {
    return java.util.Arrays.copyOf(content, length);
  }
}

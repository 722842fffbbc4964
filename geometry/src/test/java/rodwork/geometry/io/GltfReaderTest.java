package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

class GltfReaderTest {
  private final String json = Samples.gltfJson("");
  private final byte[] buffer = Samples.gltfBuffer();

  private RawMesh read(String changed) {
    return Samples.read(Samples.glb(changed, buffer));
  }

  private void refuse(IoProblem problem, String from, String to) {
    assertThat(json).contains(from);
    Refused.file(problem, Samples.glb(json.replace(from, to), buffer));
  }

  @Test
  void lengthsAreMetres() {
    assertThat(read(json).facts().declaredUnit()).contains(LengthUnit.METRE);
    assertThat(read(json).facts().format()).isEqualTo(Format.GLB);
    assertThat(Samples.read(Samples.gltf()).facts().format()).isEqualTo(Format.GLTF);
  }

  @Test
  void nodesPlaceMeshesInsideEachOther() {
    // The outer node shifts, the inner one turns a quarter about z, x to y, and doubles z.
    RawMesh mesh =
        read(
            json.replace(
                "\"nodes\":[{\"mesh\":0}]",
                "\"nodes\":[{\"translation\":[1,2,3],\"children\":[1]},{\"mesh\":0,"
                    + "\"rotation\":[0,0,0.70710678,0.70710678],\"scale\":[1,1,2]}]"));
    assertThat(mesh.toMesh().vertex(1).distance(new Vec3(1, 12, 3))).isLessThan(1e-6);
    assertThat(mesh.toMesh().vertex(3).distance(new Vec3(1, 2, 24))).isLessThan(1e-6);
    RawMesh mirrored =
        read(
            json.replace(
                "{\"mesh\":0}", "{\"mesh\":0,\"matrix\":[1,0,0,0,0,1,0,0,0,0,-1,0,0,0,7,1]}"));
    assertThat(mirrored.toMesh().vertex(3)).isEqualTo(new Vec3(0, 0, -3.5));
    assertThat(ThreeMfReaderTest.signedVolume(mirrored, 0, 4))
        .as("the outside stays outside")
        .isCloseTo(175, within(1e-9));
  }

  @Test
  void withoutAScenePartsStandWhereTheirRootsAre() {
    assertThat(read(json.replace("\"scene\":0,\"scenes\":[{\"nodes\":[0]}],", "")).triangleCount())
        .isEqualTo(4);
  }

  @Test
  void primitivesThatShareVerticesShareThemInTheMesh() {
    RawMesh mesh =
        read(
            json.replace(
                "\"primitives\":[",
                "\"primitives\":[{\"attributes\":{\"POSITION\":0},\"mode\":6},"
                    + "{\"attributes\":{\"POSITION\":0},\"mode\":0},"
                    + "{\"attributes\":{\"POSITION\":0},\"mode\":5},"));
    assertThat(mesh.vertexCount()).isEqualTo(4);
    assertThat(mesh.copyOfCorners())
        .as("a fan, then a strip whose every second triangle is turned")
        .startsWith(0, 1, 2, 0, 2, 3, 0, 1, 2, 1, 3, 2, 0, 2, 1);
    assertThat(mesh.facts().notes())
        .containsExactly("1 parts made of points or lines were left out.");
  }

  @Test
  void stridesOffsetsAndTypesAreObeyed() {
    ByteBuffer out = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
    for (int v = 0; v < 4; v++) {
      out.position(8 + 20 * v + 4);
      for (int k = 0; k < 3; k++) {
        out.putFloat((float) Samples.XYZ[3 * v + k]);
      }
    }
    out.position(100);
    for (int corner : Samples.CORNERS) {
      out.put((byte) corner);
    }
    String changed =
        json.replace(
                "{\"buffer\":0,\"byteLength\":48}",
                "{\"buffer\":0,\"byteOffset\":8,\"byteLength\":80,\"byteStride\":20}")
            .replace("\"bufferView\":0,", "\"bufferView\":0,\"byteOffset\":4,")
            .replace("\"byteOffset\":48,\"byteLength\":24", "\"byteOffset\":90,\"byteLength\":22")
            .replace(
                "\"bufferView\":1,\"componentType\":5123",
                "\"bufferView\":1,\"byteOffset\":10,\"componentType\":5121")
            .replace("\"byteLength\":72", "\"byteLength\":200");
    RawMesh mesh = Samples.read(Samples.glb(changed, out.array()));
    assertThat(Samples.soup(mesh)).isEqualTo(Samples.tetrahedronSoup());
  }

  @Test
  void sparseValuesReplaceDenseOnes() {
    ByteBuffer out = ByteBuffer.allocate(72 + 4 + 12).order(ByteOrder.LITTLE_ENDIAN);
    out.put(buffer).put((byte) 3).position(76).putFloat(1).putFloat(2).putFloat(3);
    String sparse =
        json.replace("\"byteLength\":72", "\"byteLength\":88")
            .replace(
                "\"bufferViews\":[",
                "\"bufferViews\":[{\"buffer\":0,\"byteLength\":48},"
                    + "{\"buffer\":0,\"byteOffset\":48,\"byteLength\":24},"
                    + "{\"buffer\":0,\"byteOffset\":72,\"byteLength\":4},"
                    + "{\"buffer\":0,\"byteOffset\":76,\"byteLength\":12},")
            .replace(
                "\"type\":\"VEC3\"",
                "\"type\":\"VEC3\",\"sparse\":{\"count\":1,\"indices\":"
                    + "{\"bufferView\":2,\"componentType\":5121},\"values\":{\"bufferView\":3}}");
    RawMesh mesh = Samples.read(Samples.glb(sparse, out.array()));
    assertThat(mesh.toMesh().vertex(3)).isEqualTo(new Vec3(1, 2, 3));
    assertThat(mesh.toMesh().vertex(1)).isEqualTo(new Vec3(10, 0, 0));
    RawMesh zeros =
        Samples.read(Samples.glb(sparse.replaceFirst("\"bufferView\":0,", ""), out.array()));
    assertThat(zeros.toMesh().vertex(1)).isEqualTo(Vec3.ZERO);
    out.put(72, (byte) 4);
    Refused.file(IoProblem.GLTF_STRUCTURE, Samples.glb(sparse, out.array()));
  }

  @Test
  void wholeNumbersMayStandForShares() {
    byte[] bytes = new byte[72];
    bytes[4] = 127;
    bytes[9] = -128;
    System.arraycopy(buffer, 48, bytes, 48, 24);
    String shares =
        json.replace(
                "\"bufferView\":0,\"componentType\":5126",
                "\"bufferView\":0,\"componentType\":5120,\"normalized\":true")
            .replace("\"byteLength\":48}", "\"byteLength\":48,\"byteStride\":4}");
    RawMesh mesh = Samples.read(Samples.glb(shares, bytes));
    assertThat(mesh.toMesh().vertex(1)).isEqualTo(new Vec3(1, 0, 0));
    assertThat(mesh.toMesh().vertex(2)).isEqualTo(new Vec3(0, -1, 0));
  }

  @Test
  void brokenSisters() {
    byte[] glb = Samples.glb();
    Refused.file(IoProblem.GLB_CUT_OFF, Samples.cut(glb, 10));
    Refused.file(IoProblem.GLB_CUT_OFF, Samples.cut(glb, 15));
    Refused.file(IoProblem.GLB_CUT_OFF, Samples.cut(glb, 100));
    Refused.file(IoProblem.GLB_CUT_OFF, Samples.cut(glb, glb.length - 5));
    byte[] old = glb.clone();
    old[4] = 1;
    Refused.file(IoProblem.GLTF_VERSION, old);
    byte[] other = glb.clone();
    other[16] = 'X';
    Refused.file(IoProblem.GLTF_STRUCTURE, other);
    refuse(IoProblem.GLTF_VERSION, "\"2.0\"", "\"1.0\"");
    refuse(IoProblem.GLTF_STRUCTURE, "\"asset\":{\"version\":\"2.0\"},", "");
    refuse(IoProblem.GLTF_JSON, "\"nodes\":[{\"mesh\":0}],", "\"nodes\":[{\"mesh\":0}");
    refuse(IoProblem.GLTF_JSON, "\"mesh\":0", "\"m\u00e9sh\":0");
    refuse(IoProblem.GLTF_BUFFER, "\"byteLength\":72", "\"byteLength\":73");
    refuse(IoProblem.GLTF_STRUCTURE, "\"count\":4", "\"count\":5");
    refuse(IoProblem.GLTF_STRUCTURE, "\"count\":4", "\"count\":2000000000");
    refuse(IoProblem.GLTF_STRUCTURE, "\"count\":12", "\"count\":11");
    refuse(IoProblem.GLTF_STRUCTURE, "\"VEC3\"", "\"VEC4\"");
    refuse(IoProblem.GLTF_STRUCTURE, "\"componentType\":5126", "\"componentType\":5199");
    refuse(IoProblem.GLTF_STRUCTURE, "\"byteLength\":24", "\"byteLength\":25");
    refuse(IoProblem.GLTF_STRUCTURE, "\"byteLength\":48}", "\"byteLength\":48,\"byteStride\":8}");
    refuse(IoProblem.GLTF_STRUCTURE, "\"scene\":0", "\"scene\":1");
    refuse(IoProblem.GLTF_STRUCTURE, "\"mesh\":0", "\"mesh\":1");
    refuse(IoProblem.GLTF_STRUCTURE, "\"mesh\":0", "\"mesh\":0.5");
    refuse(IoProblem.GLTF_STRUCTURE, "{\"mesh\":0}", "{\"mesh\":0,\"children\":[0]}");
    refuse(IoProblem.GLTF_STRUCTURE, "{\"mesh\":0}", "{\"mesh\":0,\"matrix\":[1,2,3]}");
    refuse(IoProblem.GLTF_STRUCTURE, "{\"mesh\":0}", "{\"mesh\":0,\"rotation\":[0,0,0,0]}");
    refuse(IoProblem.NO_TRIANGLES, "{\"mesh\":0}", "{}");
    refuse(IoProblem.GLTF_EXTENSION, "\"scene\":0", "\"extensionsRequired\":[\"X_y\"],\"scene\":0");
    byte[] wrong = buffer.clone();
    wrong[48] = 4;
    Refused.file(IoProblem.NO_SUCH_VERTEX, Samples.glb(json, wrong));
    Refused.file(IoProblem.GLTF_EXTERNAL, Samples.gltfJson(",\"uri\":\"cast.bin\""));
    Refused.file(IoProblem.GLTF_STRUCTURE, Samples.gltfJson(",\"uri\":\"data:;base64,***\""));
    Refused.file(IoProblem.GLTF_JSON_TOO_LARGE, "{\"a\":" + "[".repeat(5000));
    String text = Base64.getEncoder().encodeToString(new byte[10]);
    Refused.file(IoProblem.GLTF_BUFFER, Samples.gltfJson(",\"uri\":\"data:;base64," + text + "\""));
  }
}

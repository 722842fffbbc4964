package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThreeMfReaderTest {
  private static final byte[] RELATIONS =
      Samples.bytes(
          "<Relationships><Relationship Target=\"3D/3dmodel.model\" Type="
              + "\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>"
              + "</Relationships>");

  private final String model = Samples.threeMfModel();

  @ParameterizedTest
  @CsvSource({
    "micron, MICRON", "millimeter, MILLIMETRE", "centimeter, CENTIMETRE",
    "inch, INCH", "foot, FOOT", "meter, METRE"
  })
  void theUnitIsDeclared(String word, LengthUnit unit) {
    byte[] file = Samples.threeMf(model.replace("millimeter", word));
    assertThat(Samples.read(file).facts().declaredUnit()).contains(unit);
    byte[] silent = Samples.threeMf(model.replace(" unit=\"millimeter\"", ""));
    assertThat(Samples.read(silent).facts().declaredUnit()).contains(LengthUnit.MILLIMETRE);
  }

  @Test
  void itemsPlaceObjectsAndAMirroredOneKeepsItsOutside() {
    String build =
        """
        <build><item objectid="7"/>
        <item objectid="7" transform="0 1 0 -1 0 0 0 0 1 100 0 0"/>
        <item objectid="7" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/></build>
        """;
    RawMesh mesh = Samples.read(placed("", build));
    assertThat(mesh.facts().solids()).isEqualTo(3);
    assertThat(mesh.triangleCount()).isEqualTo(12);
    // A quarter turn about z, x to y, then 100 along x: (10, 0, 0) comes to (100, 10, 0).
    assertThat(mesh.toMesh().vertex(5)).isEqualTo(new rodwork.geometry.Vec3(100, 10, 0));
    double volume = 10 * 10 * 10.5 / 6;
    assertThat(signedVolume(mesh, 0, 4)).isCloseTo(volume, within());
    assertThat(signedVolume(mesh, 4, 8)).isCloseTo(volume, within());
    assertThat(signedVolume(mesh, 8, 12)).isCloseTo(volume, within());
  }

  @Test
  void componentsArePlacedWithinTheirObject() {
    String more =
        """
        <object id="8"><components>
        <component objectid="7" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>
        <component objectid="7"/></components></object>
        """;
    String build = "<build><item objectid=\"8\" transform=\"1 0 0 0 1 0 0 0 1 5 0 0\"/></build>";
    RawMesh mesh = Samples.read(placed(more, build));
    assertThat(mesh.x(1)).as("doubled, then shifted").isEqualTo(25);
    assertThat(mesh.x(5)).as("shifted alone").isEqualTo(15);
    RawMesh nothingBuilt = Samples.read(placed(more, "<build/>"));
    assertThat(nothingBuilt.facts().solids()).as("only what no other contains").isEqualTo(2);
    assertThat(nothingBuilt.facts().notes()).hasSize(1);
  }

  @Test
  void componentsMayStandInAnotherPart() {
    String root =
        """
        <model unit="inch" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
         xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"
         requiredextensions="p"><resources><object id="1"><components>
        <component p:path="/3D/Objects/a.model" objectid="7"/></components></object></resources>
        <build><item objectid="1"/></build></model>
        """;
    byte[] file =
        Samples.zip(
            "_rels/.rels", RELATIONS,
            "3D/3dmodel.model", Samples.bytes(root),
            "3D/Objects/a.model", Samples.bytes(model.replace("millimeter", "inch")));
    RawMesh mesh = Samples.read(file);
    assertThat(mesh.triangleCount()).isEqualTo(4);
    byte[] twoUnits =
        Samples.zip(
            "_rels/.rels", RELATIONS,
            "3D/3dmodel.model", Samples.bytes(root),
            "3D/Objects/a.model", Samples.bytes(model));
    Refused.file(IoProblem.THREE_MF_STRUCTURE, twoUnits);
  }

  @Test
  void textMayBeUtf8OrUtf16() {
    for (byte[] text :
        new byte[][] {
          ("\uFEFF" + model).getBytes(StandardCharsets.UTF_8),
          model.replace("UTF-8", "UTF-16").getBytes(StandardCharsets.UTF_16)
        }) {
      byte[] file = Samples.zip("_rels/.rels", RELATIONS, "3D/3dmodel.model", text);
      assertThat(Samples.read(file).triangleCount()).isEqualTo(4);
    }
    refuse(IoProblem.THREE_MF_XML, model.replace("id=\"7\"", "id=\"\u00e9\""));
    refuse(IoProblem.THREE_MF_XML, "\u00ff" + model);
  }

  @Test
  void brokenSisters() {
    refuse(IoProblem.THREE_MF_XML, model.substring(0, 400));
    refuse(IoProblem.THREE_MF_XML, model.replace("</mesh>", "</mess>"));
    refuse(IoProblem.THREE_MF_STRUCTURE, model.replace("objectid=\"7\"", "objectid=\"9\""));
    refuse(IoProblem.THREE_MF_STRUCTURE, model.replace("millimeter", "cubit"));
    refuse(IoProblem.THREE_MF_STRUCTURE, model.replace("y=\"10\"", ""));
    refuse(IoProblem.THREE_MF_STRUCTURE, model.replace("y=\"10\"", "y=\"1,0\""));
    refuse(IoProblem.THREE_MF_STRUCTURE, model.replace("v3=\"1\"", "v3=\"-1\""));
    refuse(IoProblem.NO_SUCH_VERTEX, model.replace("v3=\"1\"", "v3=\"4\""));
    refuse(IoProblem.NO_TRIANGLES, model.replaceAll("<triangle .*/>", ""));
    refuse(IoProblem.THREE_MF_STRUCTURE, "<html/>");
    refuse(
        IoProblem.THREE_MF_EXTENSION,
        model.replace("<model", "<model requiredextensions=\"b\" xmlns:b=\"http://lattice\""));
    Refused.file(
        IoProblem.THREE_MF_STRUCTURE,
        Samples.zip(
            "_rels/.rels", Samples.bytes("<Relationships/>"),
            "3D/3dmodel.model", Samples.bytes(model)));
  }

  @Test
  void objectsThatContainThemselvesOrGrowWithoutEndAreRefused() {
    String itself =
        "<object id=\"8\"><components><component objectid=\"8\"/></components></object>";
    Refused.file(
        IoProblem.THREE_MF_STRUCTURE, placed(itself, "<build><item objectid=\"8\"/></build>"));
    StringBuilder doubling = new StringBuilder();
    for (int i = 100; i < 130; i++) {
      String inner = "<component objectid=\"" + (i == 100 ? 7 : i - 1) + "\"/>";
      doubling.append("<object id=\"").append(i).append("\"><components>");
      doubling.append(inner).append(inner).append("</components></object>");
    }
    Refused.file(
        IoProblem.THREE_MF_STRUCTURE,
        placed(doubling.toString(), "<build><item objectid=\"129\"/></build>"));
  }

  @Test
  void entitiesAreNotOpened() {
    String entity =
        model.replace("<model", "<!DOCTYPE m [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><model");
    assertThat(Samples.read(Samples.threeMf(entity)).triangleCount())
        .as("a document type is read over")
        .isEqualTo(4);
    refuse(IoProblem.THREE_MF_XML, entity.replace("<mesh>", "<mesh>&e;"));
  }

  private static void refuse(IoProblem problem, String model) {
    Refused.file(problem, Samples.threeMf(model));
  }

  private byte[] placed(String moreObjects, String build) {
    return Samples.threeMf(
        model
            .replace("</resources>", moreObjects + "</resources>")
            .replaceAll("<build>.*</build>", build));
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.api.Assertions.within(1e-9);
  }

  static double signedVolume(RawMesh mesh, int from, int to) {
    double sum = 0;
    for (int t = from; t < to; t++) {
      rodwork.geometry.Vec3 a = mesh.toMesh().vertex(mesh.corner(t, 0));
      rodwork.geometry.Vec3 b = mesh.toMesh().vertex(mesh.corner(t, 1));
      rodwork.geometry.Vec3 c = mesh.toMesh().vertex(mesh.corner(t, 2));
      sum += a.dot(b.cross(c)) / 6;
    }
    return sum;
  }
}

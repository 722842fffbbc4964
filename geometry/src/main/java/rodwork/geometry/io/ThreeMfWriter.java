package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Writes 3MF in mm: one object, built once where it stands, vertices and triangles in the mesh's
 * order, nothing rounded; the same mesh gives the same bytes.
 */
final class ThreeMfWriter {
  private static final String XML_HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  private static final String TYPES =
      XML_HEAD
          + """
          <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
          <Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
          <Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
          </Types>
          """;
  private static final String RELATIONS =
      XML_HEAD
          + """
          <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
          <Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
          </Relationships>
          """;
  private static final String MODEL_HEAD =
      XML_HEAD
          + """
          <model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
          <resources><object id="1" type="model"><mesh><vertices>
          """;
  private static final String MODEL_TAIL =
      """
      </triangles></mesh></object></resources>
      <build><item objectid="1"/></build>
      </model>
      """;

  /** The earliest time that a zip can name; the true one would make equal meshes differ. */
  private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 0, 0, 0);

  private ThreeMfWriter() {}

  static void write(OutputStream out, TriangleMesh mesh, Watch watch) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out);
    TextOut text = new TextOut(zip, watch);
    begin(zip, "[Content_Types].xml");
    text.put(TYPES).flush();
    begin(zip, "_rels/.rels");
    text.put(RELATIONS).flush();
    begin(zip, "3D/3dmodel.model");
    text.put(MODEL_HEAD);
    int vertices = mesh.vertexCount();
    for (int v = 0; v < vertices; v++) {
      text.put("<vertex x=\"").put(mesh.x(v)).put("\" y=\"").put(mesh.y(v));
      text.put("\" z=\"").put(mesh.z(v)).put("\"/>\n");
      text.end(0.5 * v / vertices);
    }
    text.put("</vertices><triangles>\n");
    int triangles = mesh.triangleCount();
    for (int t = 0; t < triangles; t++) {
      text.put("<triangle v1=\"").put((long) mesh.corner(t, 0));
      text.put("\" v2=\"").put((long) mesh.corner(t, 1));
      text.put("\" v3=\"").put((long) mesh.corner(t, 2)).put("\"/>\n");
      text.end(0.5 + 0.5 * t / triangles);
    }
    text.put(MODEL_TAIL).flush();
    zip.closeEntry();
    zip.finish();
  }

  private static void begin(ZipOutputStream zip, String name) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(TIME);
    zip.putNextEntry(entry);
  }
}

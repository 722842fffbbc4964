package rodwork.geometry.io;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;

/**
 * 3MF (3MF Consortium, Core Specification 1.3, with the component paths of the Production Extension
 * 1.1): the objects of the build, each where its item and its components place it, as one surface.
 *
 * <p>Without a build every object that no other contains is taken as it stands. Colours, textures
 * and settings are left out. External entities and document types are off.
 */
final class ThreeMfReader {
  private static final String RELATIONS = "_rels/.rels";
  private static final String MODEL_TYPE =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
  private static final int MAX_DEPTH = 32;
  private static final int MAX_PLACINGS = 100_000;

  private static final XMLInputFactory XML = XMLInputFactory.newDefaultFactory();

  static {
    XML.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    XML.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    XML.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, true);
  }

  private final ZipFile zip;
  private final long packedBytes;
  private final String name;
  private final MeshCollector mesh;
  private final Watch watch;
  private final Map<String, ThreeMfModel> parts = new HashMap<>();
  private int placings;

  private ThreeMfReader(ZipFile zip, long packedBytes, String name, Budget budget, Watch watch) {
    this.zip = zip;
    this.packedBytes = packedBytes;
    this.name = name;
    this.watch = watch;
    this.mesh = new MeshCollector(name, Format.THREE_MF, budget, 3 * 1024, 3 * 2048);
    mesh.solids = 0;
  }

  /** Whether a zip is a 3MF: it has relations and a model. */
  static boolean is3mf(ZipFile zip) {
    return zip.getEntry(RELATIONS) != null
        && zip.stream().anyMatch(e -> e.getName().toLowerCase(Locale.ROOT).endsWith(".model"));
  }

  /**
   * Reads a 3MF.
   *
   * @param packedBytes the real size of the zip
   */
  static RawMesh read(ZipFile zip, long packedBytes, String name, Budget budget, Watch watch) {
    ThreeMfReader reader = new ThreeMfReader(zip, packedBytes, name, budget, watch);
    ThreeMfModel root = reader.part(reader.rootPart());
    reader.mesh.declaredUnit = Optional.of(root.unit());
    for (ThreeMfModel.Placed item : root.build()) {
      reader.place(item, root, Placement.NONE, new ArrayDeque<>());
    }
    if (root.build().isEmpty()) {
      reader.mesh.note("The file builds no object; all its objects were taken as they stand.");
      for (String id : root.outermost()) {
        ThreeMfModel.Placed item = new ThreeMfModel.Placed(id, "", Placement.NONE);
        reader.place(item, root, Placement.NONE, new ArrayDeque<>());
      }
    }
    return reader.mesh.finish();
  }

  private void place(
      ThreeMfModel.Placed placed,
      ThreeMfModel from,
      Placement outer,
      Deque<ThreeMfModel.Solid> around) {
    watch.check();
    ThreeMfModel model = placed.path().isEmpty() ? from : part(placed.path());
    ThreeMfModel.Solid solid = model.objects().get(placed.id());
    if (solid == null) {
      throw problem("object " + placed.id() + " is placed but not there");
    }
    if (around.contains(solid) || around.size() == MAX_DEPTH) {
      throw problem("object " + placed.id() + " contains itself, or more than 32 levels");
    }
    if (++placings > MAX_PLACINGS) {
      throw problem("more than 100,000 objects are placed");
    }
    Placement all = outer.after(placed.placement());
    if (solid.corners().size() > 0) {
      add(solid, all);
    }
    around.push(solid);
    for (ThreeMfModel.Placed component : solid.components()) {
      place(component, model, all, around);
    }
    around.pop();
  }

  private void add(ThreeMfModel.Solid solid, Placement placement) {
    mesh.solids++;
    int base = mesh.vertexCount();
    Doubles xyz = solid.xyz();
    for (int i = 0; i < xyz.size(); i += 3) {
      placement.place(xyz.get(i), xyz.get(i + 1), xyz.get(i + 2), mesh.xyz);
    }
    boolean turn = placement.mirrors();
    Ints corners = solid.corners();
    for (int i = 0; i < corners.size(); i += 3) {
      int b = base + corners.get(i + (turn ? 2 : 1));
      int c = base + corners.get(i + (turn ? 1 : 2));
      mesh.triangle(base + corners.get(i), b, c);
    }
  }

  private ThreeMfModel part(String path) {
    ThreeMfModel known = parts.get(path);
    if (known == null) {
      known = withXml(path, xml -> new ThreeMfModel.Parser(xml, mesh, watch).model());
      LengthUnit unit = mesh.declaredUnit.orElse(known.unit());
      if (known.unit() != unit) {
        throw problem("its parts count in " + unit.label() + " and in " + known.unit().label());
      }
      parts.put(path, known);
    }
    return known;
  }

  /** The part that the package's relations name as the model. */
  private String rootPart() {
    return withXml(
        RELATIONS,
        xml -> {
          while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                && xml.getLocalName().equals("Relationship")
                && MODEL_TYPE.equals(xml.getAttributeValue(null, "Type"))
                && xml.getAttributeValue(null, "Target") != null) {
              return xml.getAttributeValue(null, "Target");
            }
          }
          throw problem("its relations name no model");
        });
  }

  private interface XmlWork<T> {
    T on(XMLStreamReader xml) throws XMLStreamException;
  }

  private <T> T withXml(String path, XmlWork<T> work) {
    ZipEntry entry = zip.getEntry(path.startsWith("/") ? path.substring(1) : path);
    if (entry == null) {
      throw problem("the part " + path + " is not there");
    }
    try (InputStream in = new Unpacked(name, zip.getInputStream(entry), () -> packedBytes)) {
      XMLStreamReader xml = XML.createXMLStreamReader(text(in));
      try {
        return work.on(xml);
      } finally {
        xml.close();
      }
    } catch (XMLStreamException e) {
      if (e.getNestedException() instanceof IOException io
          && !(io instanceof CharacterCodingException)) {
        throw IoProblem.PACKED_DAMAGED.refusal(name, MeshFiles.reason(io));
      }
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
      throw IoProblem.THREE_MF_XML.refusal(name, path, line);
    } catch (IOException e) {
      throw IoProblem.PACKED_DAMAGED.refusal(name, MeshFiles.reason(e));
    }
  }

  /**
   * The characters of a part: UTF-8, or UTF-16 where a mark says so; these two are allowed. Left to
   * the XML reader, bytes that are neither would be reported to the error stream.
   */
  private static Reader text(InputStream part) throws IOException {
    PushbackInputStream in = new PushbackInputStream(part, 3);
    byte[] start = in.readNBytes(3);
    int mark = start.length < 2 ? 0 : (start[0] & 0xFF) << 8 | (start[1] & 0xFF);
    boolean wide = mark == 0xFEFF || mark == 0xFFFE;
    boolean utf8Mark = mark == 0xEFBB && start.length == 3 && (start[2] & 0xFF) == 0xBF;
    if (!utf8Mark) {
      in.unread(start);
    }
    Charset charset = wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
    return new InputStreamReader(in, charset.newDecoder());
  }

  private Refusal problem(String what) {
    return IoProblem.THREE_MF_STRUCTURE.refusal(name, what);
  }
}

package rodwork.geometry.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import rodwork.geometry.io.PlyHeader.Element;
import rodwork.geometry.io.PlyHeader.Property;

/**
 * PLY: text or binary of either byte order, elements and properties in any order and of any type.
 * Kept are positions, faces and their colours; all else is read over, elements with a note.
 */
final class PlyReader {
  private static final List<String> WANTED =
      List.of("x", "y", "z", "red", "green", "blue", "alpha");
  private static final int RED = 3;
  private static final int ALPHA = 6;

  private final Input in;
  private final PlyNumbers numbers;
  private final MeshCollector mesh;

  private PlyReader(Input in, PlyNumbers numbers, MeshCollector mesh) {
    this.in = in;
    this.numbers = numbers;
    this.mesh = mesh;
  }

  static RawMesh read(Input in, Budget budget) {
    Words words = new Words(in, -1);
    PlyHeader header = PlyHeader.read(words, in.name());
    PlyReader reader =
        new PlyReader(
            in,
            PlyNumbers.of(header.encoding(), words, in),
            new MeshCollector(in.name(), Format.PLY, budget, 3 * 1024, 3 * 2048));
    header.elements().forEach(reader::element);
    String rest = reader.numbers.rest();
    if (!rest.isEmpty()) {
      reader.mesh.note("Behind the last record stand {rest} of something else; left out.", rest);
    }
    return reader.mesh.finish();
  }

  private void element(Element element) {
    if (element.properties().isEmpty()) {
      return; // records without content take no place in the file
    }
    Runnable kept =
        switch (element.name()) {
          case "vertex" -> beginVertices(element);
          case "face" -> beginFaces(element);
          default -> {
            if (element.count() > 0) {
              mesh.note("The element {name} was left out.", element.name());
            }
            yield () -> {};
          }
        };
    int[] roles =
        element.properties().stream().mapToInt(property -> role(element, property)).toArray();
    long done = 0;
    try {
      for (; done < element.count(); done++) {
        numbers.beginRecord();
        for (int p = 0; p < roles.length; p++) {
          value(element.properties().get(p), roles[p]);
        }
        numbers.endRecord();
        kept.run();
      }
    } catch (PlyNumbers.DataEnd e) {
      throw IoProblem.PLY_CUT_OFF.refusal(in.name(), element.count(), element.name(), done);
    }
  }

  /** The values of the present record that are kept, in the order of {@link #WANTED}. */
  private final double[] record = new double[WANTED.size()];

  private static final int NOT_KEPT = -1;
  private static final int CORNERS = -2;

  private static int role(Element element, Property property) {
    String name =
        property.name().startsWith("diffuse_") ? property.name().substring(8) : property.name();
    return switch (property) {
      case Property.Scalar scalar -> WANTED.indexOf(name);
      case Property.Sequence list ->
          element.name().equals("face") && isCorners(list) ? CORNERS : NOT_KEPT;
    };
  }

  private static boolean isCorners(Property property) {
    return property instanceof Property.Sequence
        && (property.name().equals("vertex_indices") || property.name().equals("vertex_index"));
  }

  private void value(Property property, int role) {
    switch (property) {
      case Property.Scalar scalar -> {
        double value = numbers.next(scalar.type());
        if (role >= RED) {
          record[role] = share(value, scalar.type());
        } else if (role >= 0) {
          record[role] = value;
        }
      }
      case Property.Sequence list -> {
        long count = whole(numbers.next(list.count()));
        if (count < 0) {
          throw IoProblem.PLY_LIST.refusal(in.name(), list.name(), mesh.faces + 1, count);
        }
        for (long i = 0; i < count; i++) {
          double value = numbers.next(list.type());
          if (role == CORNERS) {
            mesh.corner(whole(value));
          }
        }
      }
    }
  }

  private long whole(double value) {
    if (value != Math.rint(value) || Math.abs(value) > 1e15) {
      throw IoProblem.PLY_WHOLE.refusal(in.name(), mesh.faces + 1, value);
    }
    return (long) value;
  }

  private static double share(double value, PlyHeader.Type type) {
    return type.isReal() ? value : value / (type == PlyHeader.Type.USHORT ? 65535 : 255);
  }

  private Runnable beginVertices(Element element) {
    for (String axis : WANTED.subList(0, RED)) {
      if (!has(element, axis)) {
        throw IoProblem.PLY_NO_PROPERTY.refusal(in.name(), "vertex", axis);
      }
    }
    Optional<Ints> colours = colours(element);
    mesh.vertexColours = colours;
    return () -> {
      mesh.xyz.add(record[0], record[1], record[2]);
      colours.ifPresent(list -> list.add(colour()));
    };
  }

  private Runnable beginFaces(Element element) {
    if (element.properties().stream().noneMatch(PlyReader::isCorners)) {
      throw IoProblem.PLY_NO_PROPERTY.refusal(in.name(), "face", "vertex_indices");
    }
    mesh.announcedFaces = OptionalLong.of(element.count());
    mesh.faceColours = colours(element);
    mesh.beginFace();
    return () -> {
      mesh.endFace(colour());
      mesh.beginFace();
    };
  }

  private Optional<Ints> colours(Element element) {
    record[ALPHA] = 1;
    return has(element, "red") && has(element, "green") && has(element, "blue")
        ? Optional.of(new Ints(mesh.budget, 1024))
        : Optional.empty();
  }

  private static boolean has(Element element, String name) {
    return element.properties().stream()
        .anyMatch(
            p ->
                p instanceof Property.Scalar
                    && (p.name().equals(name) || p.name().equals("diffuse_" + name)));
  }

  private int colour() {
    return Colours.ofShares(record[RED], record[RED + 1], record[RED + 2], record[ALPHA]);
  }
}

package rodwork.geometry.io;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import rodwork.geometry.Refusal;

/**
 * The text before the data of a PLY: how numbers are written, which elements follow in which order
 * and what each of their records holds (G. Turk, The PLY polygon file format, Stanford, 1994).
 */
record PlyHeader(Encoding encoding, List<Element> elements) {
  enum Encoding {
    ASCII,
    BINARY_LITTLE_ENDIAN,
    BINARY_BIG_ENDIAN
  }

  /** A number type, with its two usual names and its size. */
  enum Type {
    CHAR("char", "int8", 1),
    UCHAR("uchar", "uint8", 1),
    SHORT("short", "int16", 2),
    USHORT("ushort", "uint16", 2),
    INT("int", "int32", 4),
    UINT("uint", "uint32", 4),
    FLOAT("float", "float32", 4),
    DOUBLE("double", "float64", 8);

    private final String name;
    private final String otherName;
    final int bytes;

    Type(String name, String otherName, int bytes) {
      this.name = name;
      this.otherName = otherName;
      this.bytes = bytes;
    }

    boolean isReal() {
      return this == FLOAT || this == DOUBLE;
    }
  }

  /** One value of a record, or a counted list of values. */
  sealed interface Property {
    String name();

    Type type();

    record Scalar(String name, Type type) implements Property {}

    record Sequence(String name, Type count, Type type) implements Property {}
  }

  /** A kind of record, and how many of them the header announces. */
  record Element(String name, long count, List<Property> properties) {}

  /** Reads to the end of the line {@code end_header}, and no byte further. */
  static PlyHeader read(Words words, String file) {
    return new Parser(words, file).header();
  }

  private static final class Parser {
    private static final int MAX_PROPERTIES = 1000;

    private final Words words;
    private final String file;
    private final List<Element> elements = new ArrayList<>();
    private final Set<String> names = new HashSet<>();

    Parser(Words words, String file) {
      this.words = words;
      this.file = file;
    }

    PlyHeader header() {
      words.next(); // "ply", which told the format
      Encoding encoding = null;
      int properties = 0;
      while (true) {
        if (!words.nextLine()) {
          throw IoProblem.PLY_HEADER_CUT_OFF.refusal(file, words.line());
        }
        String key = words.next() ? words.text() : "";
        switch (key) {
          case "", "comment", "obj_info" -> {}
          case "format" -> encoding = encoding();
          case "element" -> elements.add(element());
          case "property" -> {
            if (elements.isEmpty() || ++properties > MAX_PROPERTIES) {
              throw bad("a property");
            }
            elements.getLast().properties().add(property());
          }
          case "end_header" -> {
            words.nextLine();
            if (encoding == null) {
              throw bad("an end without a line \"format\"");
            }
            return new PlyHeader(encoding, List.copyOf(elements));
          }
          default -> throw bad(key);
        }
      }
    }

    private Encoding encoding() {
      String name = word().toUpperCase(Locale.ROOT);
      for (Encoding encoding : Encoding.values()) {
        if (encoding.name().equals(name)) {
          return encoding;
        }
      }
      throw bad("format " + name);
    }

    private Element element() {
      String name = word();
      word();
      long count = words.whole();
      if (count < 0 || !names.add(name)) {
        throw bad("element " + name + " " + count);
      }
      return new Element(name, count, new ArrayList<>());
    }

    private Property property() {
      String type = word();
      if (!type.equals("list")) {
        return new Property.Scalar(word(), type(type));
      }
      Type count = type(word());
      Type values = type(word());
      if (count.isReal()) {
        throw bad("a list with a count that is no whole number");
      }
      return new Property.Sequence(word(), count, values);
    }

    private Type type(String name) {
      for (Type type : Type.values()) {
        if (type.name.equals(name) || type.otherName.equals(name)) {
          return type;
        }
      }
      throw bad("number type " + name);
    }

    private String word() {
      if (!words.next()) {
        throw bad("a line that ends early");
      }
      return words.text();
    }

    private Refusal bad(String what) {
      return IoProblem.PLY_HEADER.refusal(file, words.line(), what);
    }
  }
}

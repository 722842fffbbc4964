package rodwork.geometry.io;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** The numbers of a PLY's data, one after another, however they are written; mutable. */
abstract sealed class PlyNumbers {
  /** The data end before the record that is being read does. */
  static final class DataEnd extends RuntimeException {
    private static final long serialVersionUID = 1L;

    DataEnd() {
      super("end of data", null, false, false);
    }
  }

  /** Must come before a record's first number. */
  abstract void beginRecord();

  /** Must come behind a record's last number. */
  abstract void endRecord();

  /**
   * The next number.
   *
   * @throws DataEnd if there is none
   */
  abstract double next(PlyHeader.Type type);

  /** How much stands behind the last record, in words; empty for nothing. */
  abstract String rest();

  static PlyNumbers of(PlyHeader.Encoding encoding, Words words, Input in) {
    return switch (encoding) {
      case ASCII -> new Text(words, in);
      case BINARY_LITTLE_ENDIAN -> new Binary(in, ByteOrder.LITTLE_ENDIAN);
      case BINARY_BIG_ENDIAN -> new Binary(in, ByteOrder.BIG_ENDIAN);
    };
  }

  /** One record a line: a line too short or too long is told and never read over. */
  private static final class Text extends PlyNumbers {
    private final Words words;
    private final Input in;
    private boolean first;

    Text(Words words, Input in) {
      this.words = words;
      this.in = in;
    }

    @Override
    void beginRecord() {
      if (!words.nextAnywhere()) {
        throw new DataEnd();
      }
      first = true;
    }

    @Override
    void endRecord() {
      if (first || words.next()) {
        throw IoProblem.PLY_LINE_TOO_LONG.refusal(in.name(), words.line(), words.text());
      }
      words.nextLine();
    }

    @Override
    double next(PlyHeader.Type type) {
      if (!first && !words.next()) {
        if (in.peek() < 0) {
          throw new DataEnd();
        }
        throw IoProblem.LINE_TOO_SHORT.refusal(
            in.name(), words.line(), "the header announces more values for it");
      }
      first = false;
      return words.number();
    }

    @Override
    String rest() {
      return words.nextAnywhere() ? "more lines" : "";
    }
  }

  private static final class Binary extends PlyNumbers {
    private final Input in;
    private final byte[] window;
    private final VarHandle shorts;
    private final VarHandle ints;
    private final VarHandle longs;

    Binary(Input in, ByteOrder order) {
      this.in = in;
      this.window = in.window();
      this.shorts = MethodHandles.byteArrayViewVarHandle(short[].class, order);
      this.ints = MethodHandles.byteArrayViewVarHandle(int[].class, order);
      this.longs = MethodHandles.byteArrayViewVarHandle(long[].class, order);
    }

    @Override
    void beginRecord() {}

    @Override
    void endRecord() {}

    @Override
    double next(PlyHeader.Type type) {
      if (!in.has(type.bytes)) {
        throw new DataEnd();
      }
      int place = in.position();
      in.advance(type.bytes);
      return switch (type) {
        case CHAR -> window[place];
        case UCHAR -> window[place] & 0xFF;
        case SHORT -> (short) shorts.get(window, place);
        case USHORT -> (short) shorts.get(window, place) & 0xFFFF;
        case INT -> (int) ints.get(window, place);
        case UINT -> (int) ints.get(window, place) & 0xFFFFFFFFL;
        case FLOAT -> Float.intBitsToFloat((int) ints.get(window, place));
        case DOUBLE -> Double.longBitsToDouble((long) longs.get(window, place));
      };
    }

    @Override
    String rest() {
      int more = in.fill(Input.WINDOW_BYTES);
      return more == 0 ? "" : more == Input.WINDOW_BYTES ? "many bytes" : more + " bytes";
    }
  }
}

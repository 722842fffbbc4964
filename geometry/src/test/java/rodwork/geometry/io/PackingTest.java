package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PackingTest {
  static Stream<Map.Entry<String, byte[]>> samples() {
    return Samples.all().entrySet().stream();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everyFormatMayBePacked(Map.Entry<String, byte[]> sample) {
    byte[] content = sample.getValue();
    for (byte[] packed :
        new byte[][] {
          Samples.gzip(content),
          Samples.zip("scan", content),
          Samples.zip(
              "__MACOSX/._scan.stl",
              Samples.stl(),
              ".hidden.stl",
              Samples.stl(),
              "a/read me.txt",
              Samples.bytes("Scan of a cast\n"),
              "a/scan",
              content)
        }) {
      RawMesh mesh = Samples.read(packed);
      assertThat(Samples.soup(mesh)).as(sample.getKey()).isEqualTo(Samples.tetrahedronSoup());
    }
  }

  @Test
  void theNameInsideIsKept() {
    assertThat(Samples.read(Samples.zip("a/scan.stl", Samples.stl())).facts().name())
        .isEqualTo("sample!a/scan.stl");
  }

  @Test
  void brokenSisters() {
    byte[] gzip = Samples.gzip(Samples.stl());
    Refused.file(IoProblem.PACKED_DAMAGED, Samples.cut(gzip, gzip.length - 10));
    byte[] damaged = gzip.clone();
    damaged[gzip.length - 6] ^= 0x55;
    Refused.file(IoProblem.PACKED_DAMAGED, damaged);
    byte[] zip = Samples.zip("a.stl", Samples.stl());
    Refused.file(IoProblem.PACKED_DAMAGED, Samples.cut(zip, zip.length - 10));
    Refused.file(IoProblem.EMPTY, Samples.gzip(new byte[0]));
    Refused.file(IoProblem.ZIP_WITHOUT_MESH, Samples.zip("a.txt", Samples.bytes("nothing")));
    Refused.file(IoProblem.ZIP_WITHOUT_MESH, Samples.zip("empty.stl", new byte[0]));
    Refused.file(
        IoProblem.ZIP_SEVERAL_MESHES,
        Samples.zip("a.stl", Samples.stl(), "b.ply", Samples.bytes(Samples.plyText())));
    byte[] deep = Samples.stl();
    for (int i = 0; i < 4; i++) {
      deep = i % 2 == 0 ? Samples.gzip(deep) : Samples.zip("inner", deep);
    }
    Refused.file(IoProblem.PACKED_TOO_DEEP, deep);
  }

  @Test
  void aFileThatSwellsBeyondReasonIsRefused() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(Samples.bytes("v 0 0 0\n"));
      byte[] blanks = new byte[1 << 20];
      java.util.Arrays.fill(blanks, (byte) '\n');
      for (int i = 0; i < 80; i++) {
        gzip.write(blanks);
      }
    }
    Refused.file(IoProblem.PACKED_BOMB, out.toByteArray());
    Refused.file(IoProblem.PACKED_BOMB, Samples.zip("scan.obj.gz", out.toByteArray()));
  }
}

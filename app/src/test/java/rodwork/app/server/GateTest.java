package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Requests written by hand, as a page elsewhere or another user of the machine would send them. */
class GateTest {
  @TempDir Path bench;
  private BenchServer server;

  @BeforeEach
  void start() throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html><title>bench</title>");
    Files.writeString(bench.resolve("bench.js"), "export {};");
    server = BenchServer.start(BenchServer.Settings.of(bench, null, 0, bench));
  }

  @AfterEach
  void stop() {
    server.close();
  }

  @Test
  void theBenchItselfNeedsNoToken() throws IOException {
    String answer = get("/", "Host: 127.0.0.1:" + server.port());
    assertThat(answer).startsWith("HTTP/1.1 200").contains("<title>bench</title>");
    assertThat(answer).containsIgnoringCase("Content-Security-Policy: default-src 'self';");
    assertThat(answer).containsIgnoringCase("X-Content-Type-Options: nosniff");
    assertThat(answer).containsIgnoringCase("Content-Type: text/html");
    assertThat(get("/bench.js", "Host: localhost:" + server.port()))
        .containsIgnoringCase("Content-Type: text/javascript");
  }

  @Test
  void aForeignHostNameIsRefused() throws IOException {
    String answer = get("/", "Host: bench.example:" + server.port());
    assertThat(answer).startsWith("HTTP/1.1 403").contains("\"code\":\"host-refused\"");
    assertThat(get("/", "Host: 127.0.0.1:1")).startsWith("HTTP/1.1 403");
  }

  @Test
  void aForeignPageIsRefusedEvenWithTheToken() throws IOException {
    String answer =
        get(
            "/api/casts",
            "Host: 127.0.0.1:" + server.port(),
            "Origin: http://pages.example",
            "Authorization: Bearer " + server.token());
    assertThat(answer).startsWith("HTTP/1.1 403").contains("\"code\":\"origin-refused\"");
  }

  @Test
  void withoutTheTokenNothingIsAnswered() throws IOException {
    String host = "Host: 127.0.0.1:" + server.port();
    assertThat(get("/api/casts", host))
        .startsWith("HTTP/1.1 401")
        .contains("\"code\":\"token-refused\"");
    assertThat(get("/api/casts", host, "Authorization: Bearer x")).startsWith("HTTP/1.1 401");
    assertThat(get("/api/casts?token=" + server.token(), host)).startsWith("HTTP/1.1 401");
  }

  @Test
  void nothingOutsideTheBenchIsServed() throws IOException {
    Files.writeString(bench.resolveSibling("secret.txt"), "secret");
    String host = "Host: 127.0.0.1:" + server.port();
    for (String path : new String[] {"/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt"}) {
      assertThat(get(path, host)).doesNotContain("\r\n\r\nsecret").startsWith("HTTP/1.1 4");
    }
    Files.delete(bench.resolveSibling("secret.txt"));
  }

  private String get(String path, String... headers) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket.setSoTimeout(10_000);
      String request =
          "GET "
              + path
              + " HTTP/1.1\r\n"
              + String.join("\r\n", headers)
              + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      return new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8))
          .lines()
          .collect(Collectors.joining("\r\n"));
    }
  }
}

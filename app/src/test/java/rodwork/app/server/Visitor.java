package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.WebSocket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import rodwork.app.report.Json;

/** A client of the server as a browser would be one, with the token. */
final class Visitor implements AutoCloseable {
  private static final int PATIENCE_SECONDS = 120;

  private final HttpClient client = HttpClient.newHttpClient();
  private final BenchServer server;

  Visitor(BenchServer server) {
    this.server = server;
  }

  JsonNode json(String method, String path, byte[] body, int status) throws IOException {
    HttpResponse<byte[]> answer = ask(method, path, BodyPublishers.ofByteArray(body));
    String text = new String(answer.body(), StandardCharsets.UTF_8);
    if (answer.statusCode() != status) {
      throw new AssertionError(
          method + " " + path + " answered " + answer.statusCode() + ": " + text);
    }
    return Json.read(text);
  }

  JsonNode json(String method, String path, String body, int status) throws IOException {
    return json(method, path, body.getBytes(StandardCharsets.UTF_8), status);
  }

  HttpResponse<byte[]> ask(String method, String path, BodyPublisher body) throws IOException {
    try {
      return client.send(
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
              .header("Authorization", "Bearer " + server.token())
              .method(method, body)
              .build(),
          BodyHandlers.ofByteArray());
    } catch (InterruptedException interrupted) {
      throw new AssertionError(interrupted);
    }
  }

  Talk talk(String castId, String token) {
    Talk talk = new Talk();
    talk.socket =
        client
            .newWebSocketBuilder()
            .buildAsync(
                URI.create(
                    "ws://127.0.0.1:"
                        + server.port()
                        + "/api/casts/"
                        + castId
                        + "/survey?token="
                        + token),
                talk)
            .join();
    return talk;
  }

  @Override
  public void close() {
    client.close();
  }

  /** One open WebSocket and what came through it. */
  static final class Talk implements WebSocket.Listener, AutoCloseable {
    private final BlockingQueue<Object> heard = new LinkedBlockingQueue<>();
    private final StringBuilder text = new StringBuilder();
    private ByteBuffer binary = ByteBuffer.allocate(0);
    private @Nullable WebSocket socket;

    void say(String message) {
      if (socket != null) {
        socket.sendText(message, true).join();
      }
    }

    /** The next text message. */
    JsonNode hearText() throws IOException {
      return Json.read((String) next());
    }

    /** The next survey frame. */
    Frame hearFrame() throws IOException {
      Object heardNext = next();
      if (heardNext instanceof ByteBuffer bytes) {
        return Frame.of(bytes);
      }
      throw new AssertionError("a frame was awaited, there came " + heardNext);
    }

    private Object next() {
      try {
        Object one = heard.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
        if (one == null) {
          throw new AssertionError("nothing came for " + PATIENCE_SECONDS + " s");
        }
        return one;
      } catch (InterruptedException interrupted) {
        throw new AssertionError(interrupted);
      }
    }

    @Override
    public @Nullable CompletionStage<?> onText(WebSocket ws, CharSequence part, boolean last) {
      text.append(part);
      if (last) {
        heard.add(text.toString());
        text.setLength(0);
      }
      ws.request(1);
      return null;
    }

    @Override
    public @Nullable CompletionStage<?> onBinary(WebSocket ws, ByteBuffer part, boolean last) {
      ByteBuffer all = ByteBuffer.allocate(binary.remaining() + part.remaining());
      all.put(binary).put(part).flip();
      binary = all;
      if (last) {
        heard.add(binary.order(ByteOrder.LITTLE_ENDIAN));
        binary = ByteBuffer.allocate(0);
      }
      ws.request(1);
      return null;
    }

    @Override
    public @Nullable CompletionStage<?> onClose(WebSocket ws, int code, String reason) {
      heard.add("{\"closed\":" + code + "}");
      return CompletableFuture.completedFuture(null);
    }

    @Override
    public void close() {
      if (socket != null) {
        socket.abort();
      }
    }
  }

  /** A survey frame taken apart as docs/protocol.md says. */
  record Frame(JsonNode head, float[] depth, byte[] flags, float[] points) {
    static Frame of(ByteBuffer bytes) throws IOException {
      bytes.order(ByteOrder.LITTLE_ENDIAN);
      if (bytes.getInt() != 0x31535752) {
        throw new AssertionError("no survey frame");
      }
      byte[] json = new byte[bytes.getInt()];
      bytes.get(json);
      JsonNode head = Json.read(new String(json, StandardCharsets.UTF_8));
      float[] depth = new float[head.get("vertices").asInt()];
      for (int i = 0; i < depth.length; i++) {
        depth[i] = bytes.getFloat();
      }
      byte[] flags = new byte[head.get("flags").asInt()];
      bytes.get(flags);
      bytes.position((bytes.position() + 3) & ~3);
      float[] points = new float[3 * head.get("points").asInt()];
      for (int i = 0; i < points.length; i++) {
        points[i] = bytes.getFloat();
      }
      if (bytes.hasRemaining()) {
        throw new AssertionError(bytes.remaining() + " bytes too many");
      }
      return new Frame(head, depth, flags, points);
    }

    long seq() {
      return head.get("seq").asLong();
    }
  }
}

package rodwork.app.server;

import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rodwork.app.AppRefusal;

/**
 * Who may ask. Three questions, each enough to refuse:
 *
 * <ul>
 *   <li>Is the request addressed to this server? A page elsewhere whose name was bent to this
 *       machine's address (DNS rebinding) still says its own name in {@code Host}.
 *   <li>Does it come from the bench's own page? Browsers say in {@code Origin} which page asks.
 *   <li>Does it carry the token of this run? Other users of this machine do not know it.
 * </ul>
 */
final class Gate {
  private static final int TOKEN_BYTES = 18;
  private static final String BEARER = "Bearer ";

  private final Set<String> hosts;
  private final String token;
  private volatile int port;

  private Gate(Set<String> hosts, String token) {
    this.hosts = hosts;
    this.token = token;
  }

  /**
   * Makes a gate with a new random token.
   *
   * @param listen the address that the server listens at
   */
  static Gate of(String listen) {
    byte[] random = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(random);
    return new Gate(
        hostsFor(listen), Base64.getUrlEncoder().withoutPadding().encodeToString(random));
  }

  /** Tells the gate the port, once it is known. */
  void setPort(int port) {
    this.port = port;
  }

  String token() {
    return token;
  }

  /** Refuses what is not addressed to this server or comes from a foreign page. */
  void checkSender(Context request) {
    String host = request.header("Host");
    if (host == null || !isOurs(host)) {
      throw AppRefusal.HOST_REFUSED.with(host == null ? "" : host);
    }
    String origin = request.header("Origin");
    if (origin != null && !(origin.startsWith("http://") && isOurs(origin.substring(7)))) {
      throw AppRefusal.ORIGIN_REFUSED.with(origin);
    }
  }

  /** Refuses what does not carry the token: HTTP in the header, a WebSocket in the query. */
  void checkToken(Context request) {
    String header = request.header("Authorization");
    String given =
        header != null && header.startsWith(BEARER) ? header.substring(BEARER.length()) : null;
    check(given);
  }

  /** Refuses a WebSocket whose address does not carry the token; browsers set no header there. */
  void checkSocketToken(Context upgrade) {
    check(upgrade.queryParam("token"));
  }

  private void check(@Nullable String given) {
    if (given == null
        || !MessageDigest.isEqual(
            given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8))) {
      throw AppRefusal.TOKEN_REFUSED.with();
    }
  }

  private boolean isOurs(String hostAndPort) {
    String said = hostAndPort.toLowerCase(Locale.ROOT);
    String suffix = ":" + port;
    String host = said.endsWith(suffix) ? said.substring(0, said.length() - suffix.length()) : said;
    return (port == 80 || said.endsWith(suffix)) && hosts.contains(host);
  }

  private static Set<String> hostsFor(String listen) {
    Set<String> hosts = new HashSet<>();
    try {
      InetAddress address = InetAddress.getByName(listen);
      hosts.add(listen.toLowerCase(Locale.ROOT));
      hosts.add(literal(address));
      if (address.isLoopbackAddress() || address.isAnyLocalAddress()) {
        hosts.add("localhost");
        hosts.add("127.0.0.1");
      }
      if (address.isAnyLocalAddress()) {
        hosts.add(InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT));
        NetworkInterface.networkInterfaces()
            .flatMap(NetworkInterface::inetAddresses)
            .forEach(a -> hosts.add(literal(a)));
      }
    } catch (UnknownHostException | SocketException _) {
      // An address that cannot be looked up is refused when the server tries to listen at it.
    }
    return hosts;
  }

  /** An address as it stands in a Host header: IPv6 in brackets, without its zone. */
  private static String literal(InetAddress address) {
    String text = address.getHostAddress();
    int zone = text.indexOf('%');
    String bare = zone < 0 ? text : text.substring(0, zone);
    return bare.contains(":") ? "[" + bare + "]" : bare;
  }
}

package rodwork.casework.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) in hexadecimal digits. */
final class Sha256 {
  private Sha256() {}

  static String of(byte[] bytes) {
    return hex(digest().digest(bytes));
  }

  static String hex(byte[] digest) {
    return HexFormat.of().formatHex(digest);
  }

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}

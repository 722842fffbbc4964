package rodwork.casework.store;

/**
 * The content of a part, by what identifies it.
 *
 * @param hash SHA-256 in 64 lower-case hexadecimal digits
 * @param size bytes
 */
public record Part(String hash, long size) {
  public Part {
    if (!hash.matches("[0-9a-f]{64}") || size < 0) {
      throw new IllegalArgumentException("no content: " + hash + ", " + size + " bytes");
    }
  }

  /** What identifies some bytes. */
  public static Part of(byte[] bytes) {
    return new Part(Sha256.of(bytes), bytes.length);
  }
}

package rodwork.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What was measured on, in one line. */
final class Machine {
  private Machine() {}

  /** Processor, cores, memory, system and Java of this machine. */
  static String describe() {
    return "%s, %s cores, %s, %s %s, Java %s (%s)"
        .formatted(
            value(Path.of("/proc/cpuinfo"), "model name", System.getProperty("os.arch")),
            Runtime.getRuntime().availableProcessors(),
            memory(),
            System.getProperty("os.name"),
            System.getProperty("os.version"),
            System.getProperty("java.version"),
            System.getProperty("java.vm.name"));
  }

  private static String memory() {
    String kilobytes = value(Path.of("/proc/meminfo"), "MemTotal", "").replaceAll("\\D", "");
    return kilobytes.isEmpty()
        ? "memory unknown"
        : Math.round(Long.parseLong(kilobytes) / 1048576.0) + " GiB";
  }

  /** The value behind the first line of that name; a name and its value are parted by a colon. */
  private static String value(Path file, String name, String otherwise) {
    try {
      List<String> lines = Files.readAllLines(file);
      for (String line : lines) {
        if (line.startsWith(name)) {
          return line.substring(line.indexOf(':') + 1).strip();
        }
      }
    } catch (IOException e) {
      // No such file on systems other than Linux.
    }
    return otherwise;
  }
}

package rodwork.app.command;

/** What the process says to the shell; documented in docs/commands.md. */
public final class ExitCode {
  /** All went well. */
  public static final int FINE = 0;

  /** The input was refused; code, message and advice are on stderr. */
  public static final int REFUSED = 1;

  /** The command line itself was wrong. */
  public static final int USAGE = 2;

  /** A fault of Rodwork; stderr names the file with the details. */
  public static final int FAULT = 70;

  /** Stopped from outside. */
  public static final int STOPPED = 130;

  private ExitCode() {}
}

package rodwork.app.command;

import picocli.CommandLine.IVersionProvider;
import rodwork.app.Rodwork;

/** The version that the build wrote into the program's jar. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String version = Rodwork.class.getPackage().getImplementationVersion();
    return new String[] {
      "Rodwork " + (version == null ? "(not packaged)" : version),
      "Java " + Runtime.version().feature()
    };
  }
}

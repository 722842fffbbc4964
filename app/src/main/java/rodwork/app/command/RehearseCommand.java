package rodwork.app.command;

import picocli.CommandLine.Command;

/**
 * {@code rodwork rehearse}: does the usual work once. The launcher runs it after a build and lets
 * Java keep what it loaded and learned, so that later starts are quick.
 */
@Command(name = "rehearse", hidden = true, description = "Does the usual work once.")
final class RehearseCommand implements Runnable {
  @Override
  public void run() {}
}

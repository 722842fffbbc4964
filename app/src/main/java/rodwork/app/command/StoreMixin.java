package rodwork.app.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rodwork.app.DataFolder;
import rodwork.casework.store.CaseStore;

/** Which case store a command works on. */
final class StoreMixin {
  @Option(
      names = "--store",
      paramLabel = "DIR",
      description =
          "Folder of the case store; without it: the folder rodwork/cases in the user's data"
              + " directory, or what the environment variable RODWORK_STORE names.")
  private @Nullable Path folder;

  Path folder() {
    return folder == null ? DataFolder.cases() : folder;
  }

  /** The store, made where there is none. */
  CaseStore open() {
    return CaseStore.open(folder());
  }

  CaseStore existing() {
    return CaseStore.existing(folder());
  }
}

package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaseCommandTest {
  /** A tetrahedron in text: small, and a scan as good as any to keep. */
  private static final String SCAN =
      "OFF\n4 4 0\n0 0 0\n1 0 0\n0 1 0\n0 0 1\n3 0 2 1\n3 0 1 3\n3 1 2 3\n3 2 0 3\n";

  @TempDir Path folder;

  private Shell run(String... arguments) {
    List<String> all = new ArrayList<>(List.of("case"));
    all.addAll(List.of(arguments));
    all.add("--store=" + folder.resolve("store"));
    return Shell.run(all.toArray(String[]::new));
  }

  private String fine(String... arguments) {
    Shell shell = run(arguments);
    assertThat(shell.code()).as(shell.err()).isZero();
    return shell.out();
  }

  @Test
  void aCaseIsMadeChangedUndoneCarriedAwayAndBack() throws IOException {
    Path scan = Files.writeString(folder.resolve("upper model.off"), SCAN);
    assertThat(fine("new", "A-1", "--upper", scan.toString(), "--missing", "16,15"))
        .contains("Case A-1, state 1")
        .contains("scan, upper, \"upper model.off\"")
        .contains("chart, upper")
        .contains("rulebook");
    assertThat(fine("add", "a-1", "--missing", "14")).contains("state 2");
    Path choices = Files.writeString(folder.resolve("c.json"), "{\"notUsed\":[17]}");
    assertThat(fine("add", "A-1", "--tilt", "2,0", "--choices", choices.toString()))
        .contains("state 3", "path, upper", "choices, upper");
    assertThat(fine("undo", "A-1")).contains("state 2");
    assertThat(fine("undo", "A-1")).contains("state 1");
    assertThat(fine("show", "A-1")).contains(">    1").contains("     2");
    assertThat(fine("redo", "A-1")).contains("state 2");
    assertThat(fine("list")).contains("A-1").contains("upper");

    String file = folder.resolve("a.zip").toString();
    fine("export", "A-1", file);
    assertThat(fine("import", file, "--as", "B-1")).contains("Case B-1, state 2");
    String backup = folder.resolve("backup.zip").toString();
    assertThat(fine("backup", backup)).contains("cases: 2");
    Shell restored =
        Shell.run("case", "restore", backup, "--store", folder.resolve("back").toString());
    assertThat(restored.out()).contains("cases: 2");
  }

  @Test
  void whatCannotBeUsedIsRefusedAndNothingIsMade() throws IOException {
    Path junk = Files.writeString(folder.resolve("junk.stl"), "no scan");
    Shell shell = run("new", "A-1", "--upper", junk.toString());
    assertThat(shell.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run("list").err()).contains("store-not-found");
    assertThat(run("new", "../x").err()).contains("case-code-wrong");
    fine("new", "A-1");
    assertThat(run("add", "A-1", "--tilt", "1,0").err()).contains("case-needs-scan");
    Path bad = Files.writeString(folder.resolve("bad.json"), "{\"moods\":1}");
    assertThat(run("add", "A-1", "--jaw", "upper", "--choices", bad.toString()).err())
        .contains("choices-unusable");
    assertThat(run("new", "a-1").err()).contains("case-exists");
    assertThat(run("show", "B").err()).contains("case-not-found");
    assertThat(run("undo", "A-1").err()).contains("nothing-to-undo");
    assertThat(Shell.run("case").code()).isEqualTo(ExitCode.USAGE);
  }
}

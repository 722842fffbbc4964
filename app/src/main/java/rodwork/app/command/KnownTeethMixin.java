package rodwork.app.command;

import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.Torus;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.LabelsFile;
import rodwork.geometry.Watch;

/** How a command that builds on the teeth comes to know them: found, or read from labels. */
final class KnownTeethMixin {
  @Mixin
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private TeethMixin teeth;

  @Option(
      names = "--labels",
      paramLabel = "FILE.json",
      description = "The tooth of each triangle, as rodwork teeth --labels writes it.")
  private @Nullable Path labels;

  /** Whether anything was said about the teeth, labels apart. */
  boolean given() {
    return teeth.given();
  }

  /** Whether the tooth of each triangle was given. */
  boolean labelled() {
    return labels != null;
  }

  WantedTeeth wanted() {
    return teeth.wanted();
  }

  /** What is said of tori, whatever else is. */
  Map<Torus.Site, Torus> tori() {
    return teeth.tori();
  }

  Notation notation() {
    return teeth.notation();
  }

  /** The teeth of a cast as these options say. */
  CastTeeth on(OpenedCast opened, Watch watch) {
    return on(opened, wanted(), watch);
  }

  /** The same with what else is known of them. */
  CastTeeth on(OpenedCast opened, WantedTeeth wanted, Watch watch) {
    return labels == null
        ? FindTeeth.of(opened, wanted, watch)
        : FindTeeth.labelled(opened, wanted, LabelsFile.read(labels), watch);
  }
}

package rodwork.app.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.CrownSize;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.operation.CastTeeth;

/** The teeth of a cast as a short table for a person. */
public final class TeethTable {
  private TeethTable() {}

  /** The lines of the table. */
  public static List<String> of(CastTeeth found, Notation notation) {
    Dentition dentition = found.dentition();
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%-6s %7s %7s %7s %8s  %s",
            "tooth",
            "height",
            "width",
            "depth",
            "margin",
            "mm; height from the facial margin, margin seen of its length"));
    for (Tooth tooth : dentition.inOrder()) {
      CrownSize size = tooth.size();
      lines.add(
          String.format(
              Locale.ROOT,
              "%-6s %7.1f %7.1f %7.1f %6.0f %%  %s",
              tooth.number().in(notation),
              size.facialHeightMm(),
              size.mesiodistalMm(),
              size.faciolingualMm(),
              100 * tooth.margin().seenShare(),
              tooth.number().name()));
    }
    for (Space space : dentition.spaces()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Space  %s: %s, %.1f mm%s",
              numbers(space.missing(), notation),
              space.bounded() ? "bounded" : "free end",
              space.lengthMm(),
              space.closed() ? "; closed, no space" : ""));
    }
    KennedyFinding kennedy = dentition.kennedy();
    lines.add("Kennedy " + kennedy.title());
    for (KennedyFinding.Reason reason : kennedy.reasons()) {
      lines.add(
          "  rule "
              + reason.rule().number()
              + ": "
              + reason.rule().text()
              + " Here: "
              + reason.text().in(notation));
    }
    for (KennedyFinding.Question question : kennedy.questions()) {
      lines.add(
          "Asked  "
              + question.text().in(notation)
              + " Assumed: "
              + (question.assumed() ? "yes" : "no")
              + "; otherwise "
              + question.otherwise()
              + ".");
    }
    found
        .finding()
        .remarks()
        .forEach(
            remark ->
                lines.add(
                    "Check  "
                        + remark.text().in(notation)
                        + " "
                        + remark.advice()
                        + " ("
                        + remark.code()
                        + ")"));
    dentition.remarks().forEach(remark -> lines.add("Note   " + remark.in(notation)));
    return lines;
  }

  private static String numbers(Collection<ToothNumber> teeth, Notation notation) {
    return teeth.stream().map(t -> t.in(notation)).collect(Collectors.joining(" "));
  }
}

package rodwork.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Notation;
import rodwork.app.operation.SearchPath;
import rodwork.survey.SurveyRules;
import rodwork.survey.TotalTilt;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.Travel;

/** A search for the path as a short table for a person, and its map as a table for a program. */
public final class PathTable {
  private static final int SHOWN_CHANGES = 5;

  private PathTable() {}

  /** The lines of the table, with teeth by a notation. */
  public static List<String> of(SearchPath.Found found, Notation notation) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%d tilts within %.0f°, abutments %s",
            found.map().tilts().size(),
            found.map().coneDeg(),
            found.sites().abutments().stream()
                .map(notation::number)
                .collect(Collectors.joining(", ", "[", "]"))));
    lines.add(
        String.format(
            Locale.ROOT,
            "%-10s %8s %8s %7s  %6s  %8s %9s %12s %10s",
            "",
            "anterior",
            "right",
            "total",
            "worth",
            "enamel",
            "short of",
            "in the way",
            "shows"));
    row(lines, "reference", found.reference());
    row(lines, "best", found.best());
    List<PathFactors> choices = found.choices();
    for (int i = 0; i < choices.size(); i++) {
      row(lines, "choice " + (i + 1), choices.get(i));
    }
    lines.add("Lengths are means in mm; less is better: see rodwork help path.");
    changes(lines, "better", found.comparison().better(), notation);
    changes(lines, "worse", found.comparison().worse(), notation);
    notes(lines, found, notation);
    return lines;
  }

  private static void row(List<String> lines, String name, PathFactors tilt) {
    lines.add(
        String.format(
            Locale.ROOT,
            "%-10s %8s %8s %7s  %6.3f  %8.2f %9.2f %12.2f %10.2f",
            name,
            SurveyTable.degrees(tilt.tilt().anteriorDeg()),
            SurveyTable.degrees(tilt.tilt().rightDeg()),
            SurveyTable.degrees(tilt.tilt().totalDeg()),
            tilt.worth(),
            tilt.figure(PathFactors.Factor.GUIDING),
            tilt.figure(PathFactors.Factor.RETENTION),
            tilt.figure(PathFactors.Factor.INTERFERENCE),
            tilt.figure(PathFactors.Factor.APPEARANCE)));
  }

  private static void changes(
      List<String> lines, String word, List<PathComparison.Change> changes, Notation notation) {
    if (changes.isEmpty()) {
      lines.add("Against the reference orientation nothing gets " + word + ".");
      return;
    }
    lines.add("Against the reference orientation gets " + word + ":");
    changes.stream().limit(SHOWN_CHANGES).forEach(change -> lines.add("  " + change.in(notation)));
    if (changes.size() > SHOWN_CHANGES) {
      lines.add("  and " + (changes.size() - SHOWN_CHANGES) + " more, see --json");
    }
  }

  private static void notes(List<String> lines, SearchPath.Found found, Notation notation) {
    SurveyRules rules = found.cast().surveyor().rules();
    TotalTilt total = TotalTilt.of(found.best().tilt());
    if (total.passes(rules.tiltWarn())) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Warning: a total tilt of %.1f° is over %.0f°: the patient may be unable to open"
                  + " enough.",
              total.deg(),
              rules.tiltWarn().value()));
    } else if (total.passes(rules.tiltNote())) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Note: a total tilt of %.1f° is more than the few degrees that are usual.",
              total.deg()));
    }
    lines.add(wayOut(found));
    for (Map.Entry<Integer, Double> tooth :
        found.map().neverHeld(rules.fits().value()).entrySet()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s has no usable undercut at any tilt (most %.2f mm): a tilt moves undercuts, it"
                  + " cannot make retention against the path of displacement.",
              notation.number(tooth.getKey()),
              tooth.getValue()));
    }
    lines.add("An aid: the prescriber examines the patient, decides and signs.");
  }

  /** How the denture leaves at the best tilt, held against the opening of the mouth. */
  private static String wayOut(SearchPath.Found found) {
    Travel travel = found.best().travel();
    OptionalDouble opening = found.teeth().dentition().chart().openingMm();
    String way =
        String.format(
            Locale.ROOT,
            "On the way out at the best tilt nothing touches any more after %.1f mm, with a"
                + " sideways shift of %.1f mm; the denture rises %.1f mm above the occlusal plane,"
                + " beyond its own height: ",
            travel.alongMm(),
            travel.shiftMm(),
            travel.roomMm());
    if (opening.isEmpty()) {
      return way + "the opening of the mouth is not known.";
    }
    return way
        + String.format(
            Locale.ROOT,
            "the mouth opens %.0f mm%s.",
            opening.getAsDouble(),
            travel.roomMm() > opening.getAsDouble() ? ", which is less" : "");
  }

  /** Every tilt of the map, one a line, with a head line; lengths in mm, angles in degrees. */
  public static String csv(SearchPath.Found found) {
    StringBuilder text = new StringBuilder("anterior_deg,right_deg,total_deg,worth");
    for (PathFactors.Factor factor : PathFactors.Factor.values()) {
      text.append(',').append(PathJson.word(factor)).append("_worth");
    }
    text.append(
        ",enamel_mm,short_of_gauge_mm,evenness,in_the_way_mm,shows_mm,along_mm,shift_mm,room_mm\n");
    for (PathFactors tilt : found.map().tilts()) {
      text.append(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.3f,%.5f",
              tilt.tilt().anteriorDeg(),
              tilt.tilt().rightDeg(),
              tilt.tilt().totalDeg(),
              tilt.worth()));
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        text.append(String.format(Locale.ROOT, ",%.5f", tilt.worth(factor)));
      }
      text.append(
          String.format(
              Locale.ROOT,
              ",%.4f,%.4f,%.4f,%.4f,%.4f,%.3f,%.3f,%.3f%n",
              tilt.guiding().enamelMm(),
              tilt.retention().shortMm(),
              tilt.retention().evenness(),
              tilt.interference().meanMm(),
              tilt.appearance().showsMm(),
              tilt.travel().alongMm(),
              tilt.travel().shiftMm(),
              tilt.travel().roomMm()));
    }
    return text.toString();
  }
}

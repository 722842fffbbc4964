package rodwork.app;

import java.util.Arrays;
import java.util.Locale;
import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/**
 * The refusals that arise at the edge of the program: files, addresses, requests. Those of the
 * input itself are kept by the module that judges it.
 */
public enum AppRefusal {
  FILE_UNWRITABLE(
      "file-unwritable",
      "%s cannot be written: %s.",
      "Check that the folder exists, may be written to and has room; nothing was changed."),
  NO_FONTS(
      "no-fonts",
      "The picture cannot be lettered on this machine: %s.",
      "Install fonts (for example the packages fontconfig and fonts-dejavu-core) and a Java that is"
          + " not stripped of its drawing part."),
  NOT_FINITE(
      "not-finite",
      "%s holds coordinates that are no numbers (NaN or infinite).",
      "Look at it with rodwork intake, which tells what can be mended; export the scan again."),
  FILE_UNREADABLE(
      "file-unreadable", "%s cannot be read: %s.", "Check the name and that the file may be read."),
  JSON_WRONG(
      "json-wrong",
      "%s is not what is wanted here: %s.",
      "See the help of the command and docs/schema for what the file holds."),
  CHART_WRONG(
      "chart-wrong",
      "%s is no chart that can be read: line %s, %s: %s.",
      "Mend that place; docs/schema/chart.schema.json says what a chart holds. Only jaw and missing"
          + " teeth are needed."),
  CHOICES_UNUSABLE(
      "choices-unusable",
      "%s holds no choices that can be used: %s.",
      "Mend that place; docs/schema/choices.schema.json says what choices hold."),
  PAGE_ENDING(
      "page-ending",
      "%s: its ending does not say in which form the page shall be written.",
      "End its name in .html, .md or .json."),
  TEETH_NEED_JAW(
      "teeth-need-jaw",
      "Whether the cast is upper or lower is not known, and its shape cannot tell; teeth have no"
          + " numbers without it.",
      "Say which it is: --jaw upper or --jaw lower."),
  POINT_OF_MISSING(
      "point-of-missing",
      "Tooth %s has a point, and is called missing.",
      "Take its point out, or call it present in the chart."),
  TWO_JAWS(
      "two-jaws",
      "Upper and lower are both named for one cast: %s.",
      "One cast shows one arch; leave out what belongs to the other."),
  LABELS_OF_ANOTHER_SCAN(
      "labels-of-another-scan",
      "The labels are of another scan: they name %s triangles, the scan file has %s.",
      "Give the labels that rodwork teeth --labels wrote for this file."),
  CASE_NEEDS_SCAN(
      "case-needs-scan",
      "The case \"%s\" has %s scans that this could be done on; one is needed.",
      "Say --jaw upper or --jaw lower, or put a scan in with rodwork case add."),
  PATH_NEEDS_TEETH(
      "path-needs-teeth",
      "The teeth of the cast are not known, and the search for a path looks at teeth.",
      "Say which teeth are missing, or point at the teeth, first."),
  PLANE_NEEDS_TEETH(
      "plane-needs-teeth",
      "The teeth of the cast are not known, and the occlusal plane rests on their cusps and edges.",
      "Say which teeth are missing, or point at the teeth, first; or give three points."),
  RIGHT_NEEDS_JAW(
      "right-needs-jaw",
      "A right tilt of %s° was asked for, but whether the cast is upper or lower is not known, and"
          + " its shape cannot tell right from left.",
      "Say which it is: --jaw upper or --jaw lower."),
  ABUTMENT_IS_IMPLANT(
      "abutment-is-implant",
      "The chart calls tooth %s an implant: implants are recognised, and not judged.",
      "Ask for teeth, or correct the chart where it is one."),
  TILT_PAST_LIMIT(
      "tilt-past-limit",
      "The path is tilted by %s° in all, over the limit of %s° (tilt-limit of the rulebook): the"
          + " patient may be unable to open far enough to seat the denture.",
      "Take another path, or give --past-limit where you know that the mouth opens far enough."),
  TOOTH_NOT_FOUND(
      "tooth-not-found",
      "Tooth %s is not among the teeth found on this cast.",
      "Click it on the cast to add it, or ask for another."),
  ANSWER_WRONG(
      "answer-wrong",
      "The answer \"%s\" cannot be taken: %s.",
      "Answer as in --answer poor-hygiene=no or --answer 35:mobile=yes."),
  ABUTMENTS_NEED_TEETH(
      "abutments-need-teeth",
      "The teeth of the cast are not known, and abutments are teeth.",
      "Say which teeth are missing, or point at the teeth, first."),
  PLAN_NEEDS_TEETH(
      "plan-needs-teeth",
      "The teeth of the cast are not known, and a plan rests on teeth.",
      "Say which teeth are missing, or point at the teeth, first."),
  AXIS_FROM_BELOW(
      "axis-from-below",
      "The withdrawal axis %s points %s° away from the occlusal direction of this cast; the limit"
          + " is below 90°.",
      "Give the direction in which the denture leaves, from tissue to the occlusal side, in the"
          + " scan file's own frame."),
  MEMORY_SHORT(
      "memory-short",
      "The work on %s needs more memory than the %s MiB that Java may use here.",
      "Reduce the scan to the arch, or give Java more with the environment variable"
          + " JAVA_TOOL_OPTIONS=-Xmx4g."),
  PORT_TAKEN(
      "port-taken",
      "Nothing can listen at %s port %s: %s.",
      "Choose another port with --port, or leave --port out to take any free one."),
  BENCH_NOT_BUILT(
      "bench-not-built",
      "The bench's files are missing (web/dist beside the program).",
      "Start it with ./rodwork, which builds them; Node 20 or newer is needed for that."),
  HOST_REFUSED(
      "host-refused",
      "The request was addressed to the host \"%s\", which is not this server.",
      "Open the address that rodwork printed."),
  ORIGIN_REFUSED(
      "origin-refused",
      "A page of \"%s\" asked; only the bench's own page may.",
      "Open the address that rodwork printed."),
  TOKEN_REFUSED(
      "token-refused",
      "The request carries no valid token.",
      "Open the address that rodwork printed, with everything after the #."),
  CAST_NOT_OPEN(
      "cast-not-open", "No cast \"%s\" is open.", "Open it again; GET /api/casts lists what is."),
  TOO_MANY_CASTS(
      "too-many-casts",
      "%s casts are open, and no more than %s are kept at a time.",
      "Close one that is no longer needed."),
  UPLOAD_TOO_BIG(
      "upload-too-big",
      "%s is larger than the %s MiB that the bench takes at a time.",
      "Reduce the scan to the arch, or survey it on the command line: rodwork survey."),
  UPLOAD_EMPTY("upload-empty", "%s came without content.", "Choose the scan file again."),
  REQUEST_UNREADABLE(
      "request-unreadable",
      "The request cannot be understood: %s.",
      "See docs/protocol.md for what the server takes."),
  NOT_FOUND("not-found", "There is nothing at %s.", "See docs/protocol.md for what there is."),
  NO_FIELD_YET(
      "no-field-yet",
      "A place was asked for before the first survey of this cast was finished.",
      "Ask again once a survey has come."),
  FAULT(
      "fault",
      "Rodwork made a mistake (%s). Your scan file is unharmed.",
      "Try again. If it happens again, the details are in %s.");

  private final String code;
  private final String message;
  private final String advice;

  AppRefusal(String code, String message, String advice) {
    this.code = code;
    this.message = message;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  /**
   * Fills the placeholders of message and advice, in this order.
   *
   * @throws java.util.MissingFormatArgumentException if there are too few values
   */
  public Refusal with(Object... values) {
    int first = Math.min(placeholders(message), values.length);
    Wording said = Wording.format(message, Arrays.copyOf(values, first));
    String then =
        String.format(Locale.ROOT, advice, Arrays.copyOfRange(values, first, values.length));
    return new Refusal(code, said.fdi(), then, said.pieces());
  }

  /** How many values {@link #with} needs. */
  int placeholders() {
    return placeholders(message + advice);
  }

  private static int placeholders(String text) {
    return text.split("%s", -1).length - 1;
  }
}

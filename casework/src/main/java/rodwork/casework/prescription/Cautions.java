package rodwork.casework.prescription;

import java.util.List;

/** What every document says of care. */
final class Cautions {
  static final List<String> ALL =
      List.of(
          "Rodwork measures a scan. The prescriber examines the patient, decides and signs; the design"
              + " is the prescriber's.",
          "Enamel is not visible in a scan and what is cut does not come back: check its thickness by"
              + " radiograph before preparing.",
          "Ask about nickel, cobalt and chromium; the laboratory names the alloy it used.",
          "Cobalt is classed as a carcinogen of category 1B in the European Union: follow its rules on"
              + " labelling. No beryllium.",
          "Disinfect impressions and casts before and after transfer. Grind with extraction and a"
              + " respirator.",
          "Check the scale of the scan against a measured distance of the cast before use.",
          "Local rules on custom-made devices hold.");

  private Cautions() {}
}

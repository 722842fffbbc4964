package rodwork.geometry.intake;

import java.util.List;
import rodwork.geometry.mesh.Components;

/**
 * Removes small loose pieces of surface: what a scanner saw of a cheek or of dust.
 *
 * <p>A piece goes when its area is below a share of the whole. When the pieces below it make up
 * more than a tenth of the whole, they are no islands but the surface itself, torn apart: then all
 * stay, and the user is told.
 */
final class Islands {
  private static final double MOST_REMOVED_SHARE = 0.1;

  private Islands() {}

  static void mend(Draft draft, double shareLimit, List<Remark> remarks) {
    Components parts = draft.components();
    if (parts.count() == 1) {
      return;
    }
    double total = 0;
    for (int c = 0; c < parts.count(); c++) {
      total += parts.areaMm2(c);
    }
    double limit = shareLimit * total;
    double small = 0;
    int islands = 0;
    for (int c = 0; c < parts.count(); c++) {
      if (parts.areaMm2(c) < limit) {
        small += parts.areaMm2(c);
        islands++;
      }
    }
    if (small > MOST_REMOVED_SHARE * total) {
      double largest = 100 * parts.areaMm2(parts.largest()) / total;
      remarks.add(RemarkKind.SHATTERED.remark(parts.count(), parts.count(), largest));
      return;
    }
    if (islands > 0) {
      int triangles = draft.keepOnly(t -> parts.areaMm2(parts.of(t)) >= limit);
      remarks.add(
          RemarkKind.ISLANDS_REMOVED.remark(
              islands, 100 * shareLimit, islands, triangles, 100 * small / total));
    }
    int kept = parts.count() - islands;
    if (kept > 1) {
      remarks.add(RemarkKind.PIECES_KEPT.remark(kept, kept));
    }
  }
}

package rodwork.design.load;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.jspecify.annotations.Nullable;

/**
 * A denture at rest under a force: where every spring's force balances it.
 *
 * <p>The elastic energy is convex, and quadratic in pieces: rests and tissue press only, tips pull
 * only and slip at last. Newton's method with a search along each step finds its lowest place.
 *
 * @param sinks of the denture at the origin [mm], and its slopes along x and y [mm per mm]
 * @param restN force on each rest, 0 where it is lifted
 * @param tipN pull of each tip on its tooth, upwards
 * @param bedN force on each patch of tissue
 * @param towardsX tipping moment on each tooth about its centre of resistance, of the crown towards
 *     +x [N·mm]
 * @param towardsY the same towards +y
 */
public record Equilibrium(
    Plane sinks,
    List<Double> restN,
    List<Double> tipN,
    List<Double> bedN,
    List<Double> towardsX,
    List<Double> towardsY) {

  /**
   * A rest's contact, metal on enamel: a thousand times stiffer than the stiffest tooth, so that it
   * changes no answer by more than a thousandth [N/mm].
   */
  static final double CONTACT_N_PER_MM = 1e6;

  /** A search that is sent farther than this finds no balance: nothing holds the denture [mm]. */
  private static final double TIPS_OVER_MM = 1000;

  /** Forces balance to this share of the load, moments to that of the load at an arch's width. */
  private static final double BALANCED = 1e-10;

  /** Keeps the matrix regular while hardly anything is in touch; the balance does not know it. */
  private static final double DAMPING = 1e-9;

  private static final int MOST_STEPS = 200;

  /** Sinking: {@code at + slopeX·x + slopeY·y} [mm]. */
  public record Plane(double at, double slopeX, double slopeY) {
    public double mm(double x, double y) {
      return at + slopeX * x + slopeY * y;
    }
  }

  public Equilibrium {
    restN = List.copyOf(restN);
    tipN = List.copyOf(tipN);
    bedN = List.copyOf(bedN);
    towardsX = List.copyOf(towardsX);
    towardsY = List.copyOf(towardsY);
  }

  /** Size of the tipping moment on a tooth [N·mm]. */
  public double momentNmm(int tooth) {
    return Math.hypot(towardsX.get(tooth), towardsY.get(tooth));
  }

  /** Force on all rests of a tooth [N]. */
  public double restN(RigidDenture denture, int tooth) {
    double sum = 0;
    for (int i = 0; i < restN.size(); i++) {
      sum += denture.rests().get(i).tooth() == tooth ? restN.get(i) : 0;
    }
    return sum;
  }

  /**
   * Finds it.
   *
   * @return empty where the denture tips over: rests, tips and tissue cannot balance the forces
   */
  public static Optional<Equilibrium> of(RigidDenture denture, List<RigidDenture.Force> forces) {
    return new Search(denture, forces).run();
  }

  private static final class Search {
    private final RigidDenture denture;
    private final List<RigidDenture.Force> forces;
    private final int size;
    private final double[] diagonal;
    private final LinearSolverDense<DMatrixRMaj> solver;
    private final double load;

    Search(RigidDenture denture, List<RigidDenture.Force> forces) {
      this.denture = denture;
      this.forces = forces;
      this.size = 3 + 3 * denture.teeth().size();
      this.solver = LinearSolverFactory_DDRM.symmPosDef(size);
      this.load = forces.stream().mapToDouble(f -> Math.abs(f.newtons())).sum();
      // With everything in touch: how stiff each freedom can be.
      DMatrixRMaj all = new DMatrixRMaj(size, size);
      double[] q = new double[size];
      assemble(q, new double[size], all, true);
      this.diagonal = new double[size];
      for (int i = 0; i < size; i++) {
        diagonal[i] = Math.max(all.get(i, i), 1e-6);
      }
    }

    Optional<Equilibrium> run() {
      double[] q = new double[size];
      double[] gradient = new double[size];
      double[] next = new double[size];
      double[] step = new double[size];
      DMatrixRMaj matrix = new DMatrixRMaj(size, size);
      DMatrixRMaj right = new DMatrixRMaj(size, 1);
      DMatrixRMaj found = new DMatrixRMaj(size, 1);
      for (int i = 0; i < MOST_STEPS; i++) {
        assemble(q, gradient, matrix, i == 0);
        if (i > 0 && balanced(gradient)) {
          return Optional.of(answer(q));
        }
        for (int j = 0; j < size; j++) {
          matrix.add(j, j, DAMPING * diagonal[j]);
          right.set(j, 0, -gradient[j]);
        }
        if (!solver.setA(matrix.copy())) {
          return Optional.empty();
        }
        solver.solve(right, found);
        double before = 0;
        for (int j = 0; j < size; j++) {
          step[j] = found.get(j, 0);
          before += step[j] * gradient[j];
        }
        along(q, step, before, next);
        System.arraycopy(next, 0, q, 0, size);
        if (!(Math.abs(q[0]) < TIPS_OVER_MM)) {
          return Optional.empty();
        }
      }
      return Optional.empty();
    }

    private boolean balanced(double[] gradient) {
      for (int i = 0; i < size; i++) {
        // Slopes are balanced as moments, over the width of an arch.
        double arm = i % 3 == 0 ? 1 : 30;
        if (Math.abs(gradient[i]) > BALANCED * load * arm) {
          return false;
        }
      }
      return true;
    }

    /** Goes along a step to where the energy is lowest, or near enough. */
    private void along(double[] q, double[] step, double before, double[] next) {
      double low = 0;
      double high = 1;
      double t = 1;
      double[] gradient = new double[size];
      for (int i = 0; i < 60; i++) {
        double slope = 0;
        for (int j = 0; j < size; j++) {
          next[j] = q[j] + t * step[j];
        }
        assemble(next, gradient, null, false);
        for (int j = 0; j < size; j++) {
          slope += gradient[j] * step[j];
        }
        if (Math.abs(slope) <= 0.5 * Math.abs(before) || (t == 1 && slope < 0)) {
          return;
        }
        if (slope > 0) {
          high = t;
        } else {
          low = t;
        }
        t = (low + high) / 2;
      }
    }

    /**
     * Gradient of the energy, and its second derivatives where asked for.
     *
     * @param all whether everything is taken as in touch
     */
    private void assemble(
        double[] q, double[] gradient, @Nullable DMatrixRMaj matrix, boolean all) {
      Arrays.fill(gradient, 0);
      if (matrix != null) {
        matrix.zero();
      }
      for (RigidDenture.Force f : forces) {
        gradient[0] -= f.newtons();
        gradient[1] -= f.newtons() * f.x();
        gradient[2] -= f.newtons() * f.y();
      }
      for (RigidDenture.Patch p : denture.bed()) {
        double sinks = q[0] + q[1] * p.x() + q[2] * p.y();
        if (sinks > 0 || all) {
          spring(gradient, matrix, 0, 1, p.x(), p.y(), p.nPerMm() * sinks, p.nPerMm());
        }
      }
      for (int i = 0; i < denture.teeth().size(); i++) {
        RigidDenture.Abutment t = denture.teeth().get(i);
        int at = 3 + 3 * i;
        diagonal(gradient, matrix, at, t.axialNPerMm(), q[at]);
        diagonal(gradient, matrix, at + 1, t.tippingNmm(), q[at + 1]);
        diagonal(gradient, matrix, at + 2, t.tippingNmm(), q[at + 2]);
      }
      for (RigidDenture.Rest r : denture.rests()) {
        double into = closer(q, r.tooth(), r.x(), r.y());
        if (into > 0 || all) {
          contact(
              gradient, matrix, r.tooth(), r.x(), r.y(), CONTACT_N_PER_MM * into, CONTACT_N_PER_MM);
        }
      }
      for (RigidDenture.Tip t : denture.tips()) {
        double rise = -closer(q, t.tooth(), t.x(), t.y());
        if (rise > 0 || all) {
          double pull = Math.min(t.nPerMm() * rise, t.slipsN());
          double stiff = all || t.nPerMm() * rise < t.slipsN() ? t.nPerMm() : 0;
          contact(gradient, matrix, t.tooth(), t.x(), t.y(), -pull, stiff);
        }
      }
    }

    /** By how much the denture has come closer to a tooth at a place. */
    private double closer(double[] q, int tooth, double x, double y) {
      RigidDenture.Abutment t = denture.teeth().get(tooth);
      int at = 3 + 3 * tooth;
      return q[0]
          + q[1] * x
          + q[2] * y
          - (q[at] + q[at + 1] * (x - t.x()) + q[at + 2] * (y - t.y()));
    }

    private static void diagonal(
        double[] gradient, @Nullable DMatrixRMaj matrix, int at, double stiff, double moved) {
      gradient[at] += stiff * moved;
      if (matrix != null) {
        matrix.add(at, at, stiff);
      }
    }

    private static void spring(
        double[] gradient,
        @Nullable DMatrixRMaj matrix,
        int at,
        double sign,
        double x,
        double y,
        double force,
        double stiff) {
      gradient[at] += sign * force;
      gradient[at + 1] += sign * force * x;
      gradient[at + 2] += sign * force * y;
      if (matrix != null) {
        outer(matrix, at, at, x, y, x, y, stiff);
      }
    }

    private void contact(
        double[] gradient,
        @Nullable DMatrixRMaj matrix,
        int tooth,
        double x,
        double y,
        double force,
        double stiff) {
      RigidDenture.Abutment t = denture.teeth().get(tooth);
      int at = 3 + 3 * tooth;
      double u = x - t.x();
      double v = y - t.y();
      spring(gradient, matrix, 0, 1, x, y, force, stiff);
      spring(gradient, matrix, at, -1, u, v, force, stiff);
      if (matrix != null) {
        outer(matrix, 0, at, x, y, u, v, -stiff);
        outer(matrix, at, 0, u, v, x, y, -stiff);
      }
    }

    /** Adds {@code s·(1, x, y)ᵀ(1, u, v)}. */
    private static void outer(
        DMatrixRMaj m, int row, int column, double x, double y, double u, double v, double s) {
      double[] a = {s, s * x, s * y};
      for (int i = 0; i < 3; i++) {
        m.add(row + i, column, a[i]);
        m.add(row + i, column + 1, a[i] * u);
        m.add(row + i, column + 2, a[i] * v);
      }
    }

    private Equilibrium answer(double[] q) {
      Double[] rests = new Double[denture.rests().size()];
      Double[] tips = new Double[denture.tips().size()];
      Double[] towardsX = new Double[denture.teeth().size()];
      Double[] towardsY = new Double[denture.teeth().size()];
      Arrays.fill(towardsX, 0.0);
      Arrays.fill(towardsY, 0.0);
      for (int i = 0; i < rests.length; i++) {
        RigidDenture.Rest r = denture.rests().get(i);
        rests[i] = Math.max(0, CONTACT_N_PER_MM * closer(q, r.tooth(), r.x(), r.y()));
        RigidDenture.Abutment t = denture.teeth().get(r.tooth());
        towardsX[r.tooth()] += rests[i] * (r.x() - t.x());
        towardsY[r.tooth()] += rests[i] * (r.y() - t.y());
      }
      for (int i = 0; i < tips.length; i++) {
        RigidDenture.Tip p = denture.tips().get(i);
        double rise = -closer(q, p.tooth(), p.x(), p.y());
        tips[i] = Math.clamp(p.nPerMm() * rise, 0, p.slipsN());
        RigidDenture.Abutment t = denture.teeth().get(p.tooth());
        towardsX[p.tooth()] -= tips[i] * (p.x() - t.x());
        towardsY[p.tooth()] -= tips[i] * (p.y() - t.y());
      }
      List<Double> bed =
          denture.bed().stream()
              .map(p -> p.nPerMm() * Math.max(0, q[0] + q[1] * p.x() + q[2] * p.y()))
              .toList();
      return new Equilibrium(
          new Plane(q[0], q[1], q[2]),
          List.of(rests),
          List.of(tips),
          bed,
          List.of(towardsX),
          List.of(towardsY));
    }
  }
}

package rodwork.geometry.io;

import java.util.Arrays;

/** A growing array of doubles within a budget; mutable, since a reader fills it one by one. */
final class Doubles {
  private final Budget budget;
  private double[] values;
  private int size;

  Doubles(Budget budget, int capacity) {
    budget.take(8L * capacity);
    this.budget = budget;
    this.values = new double[capacity];
  }

  int size() {
    return size;
  }

  double get(int i) {
    return values[i];
  }

  void add(double value) {
    if (size == values.length) {
      grow(size + 1L);
    }
    values[size++] = value;
  }

  void add(double a, double b, double c) {
    if (size + 3 > values.length) {
      grow(size + 3L);
    }
    values[size] = a;
    values[size + 1] = b;
    values[size + 2] = c;
    size += 3;
  }

  /** The own array, longer than {@link #size()}; valid until the next value is added. */
  double[] array() {
    return values;
  }

  void set(int i, double value) {
    values[i] = value;
  }

  /** Gives the memory back; the list is empty then. */
  void release() {
    budget.give(8L * values.length);
    values = new double[0];
    size = 0;
  }

  /** Lets the last values go. */
  void cutTo(int newSize) {
    size = Math.min(size, newSize);
  }

  private void grow(long needed) {
    int old = values.length;
    int capacity = budget.grown(old, needed);
    budget.take(8L * capacity);
    values = Arrays.copyOf(values, capacity);
    budget.give(8L * old);
  }

  /** The values in an array of exactly their number; hands the own array out where it fits. */
  double[] finish() {
    if (size != values.length) {
      budget.take(8L * size);
      budget.give(8L * values.length);
      values = Arrays.copyOf(values, size);
    }
    return values;
  }
}

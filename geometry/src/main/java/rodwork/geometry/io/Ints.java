package rodwork.geometry.io;

import java.util.Arrays;

/** A growing array of ints within a budget; mutable, since a reader fills it one by one. */
final class Ints {
  private final Budget budget;
  private int[] values;
  private int size;

  Ints(Budget budget, int capacity) {
    budget.take(4L * capacity);
    this.budget = budget;
    this.values = new int[capacity];
  }

  int size() {
    return size;
  }

  int get(int i) {
    return values[i];
  }

  void add(int value) {
    if (size == values.length) {
      grow(size + 1L);
    }
    values[size++] = value;
  }

  void add(int a, int b, int c) {
    if (size + 3 > values.length) {
      grow(size + 3L);
    }
    values[size] = a;
    values[size + 1] = b;
    values[size + 2] = c;
    size += 3;
  }

  void clear() {
    size = 0;
  }

  /** Lets the last values go. */
  void cutTo(int newSize) {
    size = Math.min(size, newSize);
  }

  private void grow(long needed) {
    int old = values.length;
    int capacity = budget.grown(old, needed);
    budget.take(4L * capacity);
    values = Arrays.copyOf(values, capacity);
    budget.give(4L * old);
  }

  /** The values in an array of exactly their number; hands the own array out where it fits. */
  int[] finish() {
    if (size != values.length) {
      budget.take(4L * size);
      budget.give(4L * values.length);
      values = Arrays.copyOf(values, size);
    }
    return values;
  }
}

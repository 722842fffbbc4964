package rodwork.demo;

/** What lies inside the arch: palate or floor of the mouth, as a height [mm]. */
sealed interface InnerSurface permits Palate, MouthFloor {
  double height(double x, double y);
}

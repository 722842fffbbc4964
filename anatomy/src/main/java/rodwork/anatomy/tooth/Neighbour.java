package rodwork.anatomy.tooth;

import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/**
 * The next tooth on the scan to one side.
 *
 * @param number which
 * @param touches whether the surfaces run into each other, as closed contacts do on a scan
 * @param gapMm shortest distance between the two crowns [mm]; 0 where they touch
 * @param at the middle of the contact, or of the shortest way between them [mm]
 */
public record Neighbour(ToothNumber number, boolean touches, double gapMm, Vec3 at) {}

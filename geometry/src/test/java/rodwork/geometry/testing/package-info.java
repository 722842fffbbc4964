/**
 * Fixtures for the tests of every module: bodies of known form as meshes, a structural checker, and
 * the place of the shared real scans.
 */
@NullMarked
package rodwork.geometry.testing;

import org.jspecify.annotations.NullMarked;

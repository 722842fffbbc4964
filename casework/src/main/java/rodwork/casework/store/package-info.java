/**
 * Cases, kept safely: a SQLite database with large content as files beside it.
 *
 * <p>A case is a set of named parts (scans, chart, pins, rulebook, plans, documents), each of them
 * bytes that never change and are known by their SHA-256. A change makes a new set and keeps the
 * old one, so undo is a step back to it and nothing is ever overwritten. {@link
 * rodwork.casework.store.CaseStore} is where to start; docs/case-store.md tells what lies on disk.
 */
@NullMarked
package rodwork.casework.store;

import org.jspecify.annotations.NullMarked;

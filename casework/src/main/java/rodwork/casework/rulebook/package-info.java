/**
 * Rulebook files: read, checked against their schema, turned into the typed records that the
 * modules before this one declare.
 *
 * <p>{@link rodwork.casework.rulebook.Rulebook} is where to start. Every refusal names the line of
 * the file and the field; docs/rulebook.md tells how to find and change a rule.
 */
@NullMarked
package rodwork.casework.rulebook;

import org.jspecify.annotations.NullMarked;

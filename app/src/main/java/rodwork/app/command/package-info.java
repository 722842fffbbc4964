/**
 * The command line: one small class a command. A command reads its options, calls operations, and
 * says the result; exit codes and the texts of failures are the business of {@link
 * rodwork.app.command.CommandLineRun} alone.
 */
@NullMarked
package rodwork.app.command;

import org.jspecify.annotations.NullMarked;

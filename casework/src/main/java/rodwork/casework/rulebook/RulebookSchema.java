package rodwork.casework.rulebook;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The schema of rulebooks and what it says of one. */
final class RulebookSchema {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Resources.text("rulebook.schema.json"));

  private RulebookSchema() {}

  /** Refuses what does not fit, naming the first line that is wrong. */
  static void check(String file, YamlTree tree) {
    List<Error> errors = SCHEMA.validate(tree.root.toString(), InputFormat.JSON);
    Optional<Error> first =
        errors.stream().min(Comparator.comparingInt(e -> tree.line(pointer(e))));
    first.ifPresent(
        error -> {
          String pointer = pointer(error);
          throw RulebookProblem.FIELD.with(
              file,
              tree.line(pointer),
              pointer.isEmpty() ? "/" : pointer.substring(1).replace('/', '.'),
              error.getMessage().replaceAll("^[^:]*: ", ""));
        });
  }

  private static String pointer(Error error) {
    return error.getInstanceLocation().toString().replaceFirst("^\\$", "");
  }
}

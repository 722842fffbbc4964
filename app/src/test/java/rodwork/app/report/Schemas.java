package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The published schemas, and a general validator (networknt) to hold output against them. */
public final class Schemas {
  private static final String BASE = "https://rodwork.invalid/schema/";
  private static final Path FOLDER =
      Path.of(System.getProperty("rodwork.root", ".."), "docs", "schema");

  private Schemas() {}

  /** What is wrong with an output; empty where it fits. */
  public static List<Error> errors(String schema, JsonNode json) throws IOException {
    Map<String, String> schemas = new HashMap<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(FOLDER, "*.schema.json")) {
      for (Path file : files) {
        schemas.put(BASE + file.getFileName(), Files.readString(file));
      }
    }
    SchemaRegistry registry =
        SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(schemas));
    Schema wanted = registry.getSchema(SchemaLocation.of(BASE + schema + ".schema.json"));
    return wanted.validate(Json.compact(json), InputFormat.JSON);
  }
}

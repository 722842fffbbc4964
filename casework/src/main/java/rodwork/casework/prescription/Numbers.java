package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.rules.Wording;

/**
 * How teeth are numbered in a content: whole numbers in FDI, as files have them, or texts in the
 * notation that a person reads.
 */
record Numbers(Notation notation) {
  void put(ObjectNode json, String name, ToothNumber tooth) {
    if (notation == Notation.FDI) {
      json.put(name, tooth.fdi());
    } else {
      json.put(name, tooth.in(notation));
    }
  }

  void add(ArrayNode json, ToothNumber tooth) {
    if (notation == Notation.FDI) {
      json.add(tooth.fdi());
    } else {
      json.add(tooth.in(notation));
    }
  }

  ArrayNode all(Collection<ToothNumber> teeth) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    teeth.forEach(tooth -> add(json, tooth));
    return json;
  }

  String of(ToothNumber tooth) {
    return tooth.in(notation);
  }

  String list(Collection<ToothNumber> teeth) {
    return teeth.stream().map(this::of).collect(Collectors.joining(", "));
  }

  String in(Wording wording) {
    return wording.in(notation);
  }
}

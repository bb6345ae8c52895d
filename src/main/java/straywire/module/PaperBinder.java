package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.format.BadEntry;
import straywire.format.Quantity;
import straywire.format.YamlValue;

/** Reads what only the wiring review looks at. */
final class PaperBinder {
  private final Module module;
  private final Labels labels;

  PaperBinder(Module module) {
    this.module = module;
    this.labels = new Labels(module);
  }

  /** {@code top} has the fields of the whole file. */
  OnPaper read(Map<String, YamlValue> top) {
    SortedMap<String, Double> capacitors = new TreeMap<>();
    if (top.containsKey("capacitors-to-ground")) {
      top.get("capacitors-to-ground")
          .fields()
          .forEach((place, value) -> capacitor(place, value, capacitors));
    }
    List<OnPaper.Explained> explained = new ArrayList<>();
    if (top.containsKey("explained")) {
      top.get("explained").items().forEach(item -> explained.add(explained(item)));
    }
    return new OnPaper(capacitors, explained);
  }

  private void capacitor(String written, YamlValue value, SortedMap<String, Double> into) {
    String place = module.parts().containsKey(written) ? written : end(written, value).toString();
    if (into.put(place, Quantity.nanofarads(value)) != null) {
      throw value.wrong(place + " has a capacitor already; write the sum of both");
    }
  }

  private End end(String written, YamlValue at) {
    End end;
    try {
      end = labels.end(written);
    } catch (BadEntry e) {
      throw at.wrong(e.getMessage());
    }
    boolean ground =
        end.kind() == End.Kind.RAIL && !module.rail(end.label()).orElseThrow().supply();
    if (ground || end.kind() == End.Kind.LAMP) {
      throw at.wrong(
          "a capacitor to ground is at a part, a pin, a control, a throw, a port line or a supply rail, not"
              + " at "
              + written);
    }
    return end;
  }

  private static OnPaper.Explained explained(YamlValue item) {
    Map<String, YamlValue> fields = item.fields(List.of("finding", "place", "because"), List.of());
    String finding = fields.get("finding").text();
    if (!finding.matches("[A-Z]+-[0-9][0-9]")) {
      throw fields.get("finding").wrong("an id of the review looks like DRV-11, got " + finding);
    }
    return new OnPaper.Explained(finding, fields.get("place").word(), fields.get("because").text());
  }
}

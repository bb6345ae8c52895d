package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import straywire.format.Nearest;
import straywire.format.YamlValue;

/** Reads rail segments, and finds them by label. */
final class RailBinder {
  private final GivenLabels labels;
  private final List<RailSegment> rails = new ArrayList<>();

  RailBinder(GivenLabels labels) {
    this.labels = labels;
  }

  /** All segments, in the order of the file, each fed by one of its own level or by none. */
  List<RailSegment> read(Map<String, YamlValue> written) {
    written.forEach(this::rail);
    link(written);
    return rails;
  }

  private void rail(String label, YamlValue value) {
    labels.take(value, label, GivenLabels.RAIL_LABEL, "a rail");
    Map<String, YamlValue> fields = value.fields(List.of("level"), List.of("linked-to"));
    boolean supply = fields.get("level").oneOf(List.of("supply", "ground")).equals("supply");
    String linkedTo = fields.containsKey("linked-to") ? fields.get("linked-to").word() : "";
    rails.add(new RailSegment(label, supply, linkedTo));
  }

  private void link(Map<String, YamlValue> written) {
    for (RailSegment rail : rails) {
      Map<String, YamlValue> fields = written.get(rail.label()).fields();
      if (!fields.containsKey("linked-to")) {
        continue;
      }
      YamlValue link = fields.get("linked-to");
      RailSegment feeding = at(link);
      if (feeding.supply() != rail.supply()) {
        throw link.wrong(
            rail.label()
                + " is "
                + level(rail)
                + ", "
                + feeding.label()
                + " is "
                + level(feeding)
                + "; link rails of one level");
      }
      RailSegment from = feeding;
      for (int steps = 0; !from.linkedTo().isEmpty(); steps++) {
        if (from.equals(rail) || steps > rails.size()) {
          throw link.wrong("the links run in a circle; leave out one where power enters");
        }
        from = at(written.get(from.label()).fields().get("linked-to"));
      }
    }
  }

  static String level(RailSegment rail) {
    return rail.supply() ? "supply" : "ground";
  }

  /** The segment that a value names. */
  RailSegment at(YamlValue value) {
    String label = value.word();
    return rails.stream()
        .filter(r -> r.label().equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                value.wrong(
                    "no rail is labelled "
                        + label
                        + Nearest.hint(label, rails.stream().map(RailSegment::label).toList())));
  }
}

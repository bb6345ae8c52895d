package straywire.parts;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import straywire.format.Fields;
import straywire.format.InputError;

/** Reads logic families from a file in the form of {@code parts/families.yaml}. */
final class Families {
  static final String FORMAT = "straywire-families/1";

  private static final Set<String> FIELDS =
      Set.of(
          "rank",
          "bus-rank",
          "open-reads-high",
          "feeds-through-inputs",
          "input",
          "meter",
          "sources");

  private Families() {}

  /** Families by name, sorted. */
  static Map<String, Family> read(String file, String text) {
    Fields fields = Fields.read(file, text);
    fields.refuseOthers(Set.of("format", "families"));
    if (!fields.text("format").equals(FORMAT)) {
      throw new InputError(file, fields.line("format"), "format: expected " + FORMAT);
    }
    Fields list = fields.fields("families");
    Map<String, Family> families = new TreeMap<>();
    for (String name : list.names()) {
      families.put(name, family(name, list.fields(name), file));
    }
    return families;
  }

  /** Where the figures of each family were read, by its name. */
  static Map<String, List<String>> sources(String file, String text) {
    Fields list = Fields.read(file, text).fields("families");
    Map<String, List<String>> sources = new TreeMap<>();
    for (String name : list.names()) {
      sources.put(name, list.fields(name).texts("sources"));
    }
    return sources;
  }

  private static Family family(String name, Fields fields, String file) {
    fields.refuseOthers(FIELDS);
    Fields rank = fields.fields("rank");
    Fields busRank = fields.fields("bus-rank");
    Fields input = fields.fields("input");
    Fields meter = fields.fields("meter");
    return new Family(
        name,
        rank(file, rank, "low"),
        rank(file, rank, "high"),
        rank(file, busRank, "low"),
        rank(file, busRank, "high"),
        fields.flag("open-reads-high"),
        fields.flag("feeds-through-inputs"),
        input.number("low-max"),
        input.number("high-min"),
        band(file, meter, "low"),
        band(file, meter, "high"),
        band(file, meter, "open"));
  }

  private static int rank(String file, Fields fields, String side) {
    double rank = fields.number(side);
    if (rank < 1 || rank > 6 || rank != Math.rint(rank)) {
      throw new InputError(file, fields.line(side), "rank: expected a whole number from 1 to 6");
    }
    return (int) rank;
  }

  private static Family.Band band(String file, Fields meter, String level) {
    Fields band = meter.fields(level);
    double least = band.number("least");
    double usual = band.number("usual");
    double most = band.number("most");
    if (least > usual || usual > most) {
      throw new InputError(
          file, meter.line(level), level + ": expected least, usual and most in rising order");
    }
    return new Family.Band(least, usual, most);
  }
}

package straywire.module;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import straywire.format.BadEntry;
import straywire.format.YamlValue;

/** Reads nets and neighbours; remembers which end is used where. */
final class NetBinder {
  private final Labels labels;
  private final Map<End, String> used = new HashMap<>();

  NetBinder(Labels labels) {
    this.labels = labels;
  }

  Net net(String name, YamlValue value) {
    if (value.isList()) {
      return net(name, value, value, true);
    }
    Map<String, YamlValue> fields = value.fields(List.of("order", "ends"), List.of());
    boolean known = fields.get("order").oneOf(List.of("known", "unknown")).equals("known");
    return net(name, value, fields.get("ends"), known);
  }

  private Net net(String name, YamlValue net, YamlValue list, boolean orderKnown) {
    List<End> ends = new ArrayList<>();
    for (YamlValue item : list.items()) {
      End end = end(item);
      String before = used.putIfAbsent(end, name + " on line " + item.line());
      if (before != null) {
        throw item.wrong(end + " is in net " + before + " already; an end is in one net, once");
      }
      if (end.kind() == End.Kind.RAIL) {
        toFront(end, ends, item, orderKnown);
      } else {
        ends.add(end);
      }
    }
    if (ends.isEmpty()) {
      throw net.wrong("the net is empty; a net joins at least two ends");
    }
    if (ends.size() == 1) {
      throw net.wrong("the net has one end, " + ends.get(0) + "; a net joins at least two ends");
    }
    return new Net(name, ends, orderKnown);
  }

  private static void toFront(End rail, List<End> ends, YamlValue item, boolean orderKnown) {
    if (!ends.isEmpty() && ends.get(0).kind() == End.Kind.RAIL) {
      throw item.wrong(
          "a net has one rail, got "
              + ends.get(0)
              + " and "
              + rail
              + "; rails of one level are joined by linked-to");
    }
    if (!ends.isEmpty() && orderKnown) {
      throw item.wrong("a net on a rail starts with it; write " + rail + " first");
    }
    ends.add(0, rail);
  }

  private End end(YamlValue item) {
    try {
      return labels.end(item.word());
    } catch (BadEntry e) {
      throw item.wrong(e.getMessage());
    }
  }

  List<List<End>> neighbours(YamlValue value) {
    List<List<End>> pairs = new ArrayList<>();
    for (YamlValue item : value.items()) {
      List<End> pair = item.items().stream().map(this::end).toList();
      if (pair.size() != 2 || pair.get(0).equals(pair.get(1))) {
        throw item.wrong("neighbours are two different ends, such as [U1.3, U2.14]");
      }
      pairs.add(pair);
    }
    return pairs;
  }
}

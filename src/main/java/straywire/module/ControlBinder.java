package straywire.module;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import straywire.format.Quantity;
import straywire.format.YamlValue;

/** Reads switches and buttons; rows of switches are words, too. */
final class ControlBinder {
  private final GivenLabels labels;
  private final RailBinder rails;
  private final SortedMap<String, Control> controls;
  private final List<Word> words;

  /** Adds what it reads to {@code controls} and {@code words}. */
  ControlBinder(
      GivenLabels labels, RailBinder rails, SortedMap<String, Control> controls, List<Word> words) {
    this.labels = labels;
    this.rails = rails;
    this.controls = controls;
    this.words = words;
  }

  void control(String label, YamlValue value) {
    Map<String, YamlValue> written = value.fields();
    if (written.containsKey("low-throw") || written.containsKey("high-throw")) {
      betweenLines(label, value);
      return;
    }
    Map<String, YamlValue> fields =
        value.fields(
            List.of("kind", "closes-to"),
            List.of("title", "pull-to", "pull-ohms", "rest", "ways", "other-throw", "other-rail"));
    String kind = fields.get("kind").oneOf(List.of("switch", "button", "dip"));
    if (kind.equals("dip") && !fields.containsKey("ways")) {
      throw value.wrong("a dip is a row of switches; say how many, such as ways: 8");
    }
    if (!kind.equals("dip") && fields.containsKey("ways")) {
      throw value.wrong("ways belong to a dip, which is a row of switches");
    }
    if (kind.equals("dip")
        && (fields.containsKey("other-throw") || fields.containsKey("other-rail"))) {
      throw value.wrong("a dip has single contacts; write its change-overs as switches");
    }
    if (kind.equals("dip")) {
      labels.take(value, label, GivenLabels.LABEL, "a word");
      List<String> members = GivenLabels.row(label, fields.get("ways"));
      members.forEach(member -> contact(member, value, fields, false));
      words.add(new Word(label, members));
    } else {
      contact(label, value, fields, kind.equals("button"));
    }
  }

  private void contact(
      String label, YamlValue value, Map<String, YamlValue> fields, boolean button) {
    labels.take(value, label, GivenLabels.LABEL, "a control");
    String title = title(fields);
    RailSegment closesTo = rails.at(fields.get("closes-to"));
    if (fields.containsKey("pull-to") != fields.containsKey("pull-ohms")) {
      throw value.wrong("pull-to and pull-ohms belong together; write both or neither");
    }
    String pullTo = "";
    int pullOhms = 0;
    if (fields.containsKey("pull-to")) {
      RailSegment pull = rails.at(fields.get("pull-to"));
      if (pull.supply() == closesTo.supply()) {
        throw fields
            .get("pull-to")
            .wrong(
                "the contact closes to "
                    + RailBinder.level(closesTo)
                    + ", so the resistor goes to "
                    + (closesTo.supply() ? "ground" : "supply")
                    + "; "
                    + pull.label()
                    + " is "
                    + RailBinder.level(pull));
      }
      pullTo = pull.label();
      pullOhms = Quantity.ohms(fields.get("pull-ohms"), 1);
    }
    boolean restHigh = restHigh(fields, !closesTo.supply());
    controls.put(
        label,
        new Control(
            label,
            button ? Control.Kind.BUTTON : Control.Kind.SWITCH,
            title,
            closesTo.label(),
            pullTo,
            pullOhms,
            restHigh,
            changeOver(value, fields, closesTo)));
  }

  /** A change-over whose common is a line, joined to one of two others. */
  private void betweenLines(String label, YamlValue value) {
    if (value.fields().containsKey("ways")) {
      throw value.wrong("a dip has single contacts; write its change-overs as switches");
    }
    for (String single : List.of("closes-to", "pull-to", "pull-ohms")) {
      if (value.fields().containsKey(single)) {
        throw value.wrong(
            "the common of a change-over is a line (low-throw and high-throw) or at a rail"
                + " (closes-to), not both; a resistor at a throw is written under resistors");
      }
    }
    Map<String, YamlValue> fields =
        value.fields(List.of("kind", "low-throw", "high-throw"), List.of("title", "rest"));
    labels.take(value, label, GivenLabels.LABEL, "a control");
    String title = title(fields);
    boolean button = fields.get("kind").oneOf(List.of("switch", "button")).equals("button");
    for (String side : List.of("low-throw", "high-throw")) {
      labels.take(fields.get(side), fields.get(side).word(), GivenLabels.LABEL, "a throw");
    }
    boolean restHigh = restHigh(fields, false);
    ChangeOver between =
        new ChangeOver.BetweenLines(
            fields.get("low-throw").word(), fields.get("high-throw").word());
    controls.put(
        label,
        new Control(
            label,
            button ? Control.Kind.BUTTON : Control.Kind.SWITCH,
            title,
            "",
            "",
            0,
            restHigh,
            Optional.of(between)));
  }

  private static String title(Map<String, YamlValue> fields) {
    return fields.containsKey("title") ? fields.get("title").text() : "";
  }

  private static boolean restHigh(Map<String, YamlValue> fields, boolean unsaid) {
    return fields.containsKey("rest")
        ? fields.get("rest").oneOf(List.of("low", "high")).equals("high")
        : unsaid;
  }

  private Optional<ChangeOver> changeOver(
      YamlValue value, Map<String, YamlValue> fields, RailSegment closesTo) {
    if (fields.containsKey("other-throw") && fields.containsKey("other-rail")) {
      throw value.wrong(
          "the common of a change-over is at a rail (other-throw) or at the line (other-rail), not"
              + " both");
    }
    if (fields.containsKey("other-throw")) {
      YamlValue other = fields.get("other-throw");
      labels.take(other, other.word(), GivenLabels.LABEL, "a throw");
      return Optional.of(new ChangeOver.OtherThrow(other.word()));
    }
    if (fields.containsKey("other-rail")) {
      RailSegment other = rails.at(fields.get("other-rail"));
      if (other.supply() == closesTo.supply()) {
        throw fields
            .get("other-rail")
            .wrong(
                "both throws would be at "
                    + RailBinder.level(closesTo)
                    + "; other-rail names a rail of the other level");
      }
      return Optional.of(new ChangeOver.OtherRail(other.label()));
    }
    return Optional.empty();
  }
}

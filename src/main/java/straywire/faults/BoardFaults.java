package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import straywire.module.ChangeOver;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.ControlContact;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.RailSegment;

/** Rails, supply, lamps and controls. */
final class BoardFaults {
  private final Module module;
  private final Places places;

  BoardFaults(Module module, Places places) {
    this.module = module;
    this.places = places;
  }

  Draft nothingWrong() {
    places.need(0, "no place");
    return new Draft("", List.of(), "Nothing is wrong", "Nothing to repair.");
  }

  Draft railNotLinked() {
    places.need(1, "a rail segment");
    RailSegment rail = places.rail(0);
    if (rail.linkedTo().isEmpty()) {
      throw places.wrong("rail " + rail.label() + " is where power enters; no link feeds it");
    }
    return Draft.plain(module, rail.label(), new SupplyEdit.RailUnlinked(rail.label()));
  }

  Draft bareLeds() {
    if (places.count() == 0) {
      throw places.wrong("names one or more lamps, got none");
    }
    List<String> lamps = new ArrayList<>();
    for (int at = 0; at < places.count(); at++) {
      Lamp lamp = places.lamp(at);
      if (lamp.ohms() == 0) {
        throw places.wrong("lamp " + lamp.label() + " is meant to have no resistor");
      }
      if (lamps.contains(lamp.label())) {
        throw places.wrong("lamp " + lamp.label() + " is named twice");
      }
      lamps.add(lamp.label());
    }
    lamps.sort(String::compareTo);
    List<Edit> edits =
        lamps.stream().map(l -> lampEdit(l, LampEdit.LampFault.NO_RESISTOR)).toList();
    Draft draft = Draft.plain(module, String.join(" ", lamps), edits);
    if (lamps.size() == 1) {
      return draft;
    }
    String all = String.join(", ", lamps);
    String ohms =
        lamps.stream()
            .map(l -> String.valueOf(module.lamps().get(l).ohms()))
            .distinct()
            .collect(Collectors.joining(" or "));
    return draft
        .saying("The lamps " + all + " have no series resistors")
        .cured(
            Draft.POWER_OFF
                + "Put a resistor of "
                + ohms
                + " ohms in series with each of the lamps "
                + all
                + ".");
  }

  Draft lamp(LampEdit.LampFault fault) {
    places.need(1, "a lamp");
    String label = places.lamp(0).label();
    return Draft.plain(module, label, lampEdit(label, fault));
  }

  Draft control(ControlEdit.ControlFault fault) {
    places.need(1, "a control");
    ControlContact contact = places.contact(0);
    if (fault == ControlEdit.ControlFault.PULL_MISSING
        && module.contact(contact.label()).map(Contact::pullTo).orElse("").isEmpty()) {
      throw places.wrong("control " + contact.label() + " is meant to have no pull resistor");
    }
    return Draft.plain(
        module,
        contact.label(),
        new ControlEdit.ControlChanged(contact.control(), contact.label(), fault));
  }

  Draft throwsExchanged() {
    places.need(1, "a control");
    Control control = places.control(0);
    if (control.changeOver().isEmpty()) {
      throw places.wrong("control " + control.label() + " has a single contact");
    }
    return Draft.plain(module, control.label(), new ControlEdit.ThrowsExchanged(control.label()));
  }

  Draft commonOpen() {
    if (places.count() < 1 || places.count() > 2) {
      throw places.wrong("names a control, and the throw its common sits at if any");
    }
    Control control = places.control(0);
    if (control.changeOver().filter(ChangeOver::commonOnRail).isEmpty()) {
      throw places.wrong("control " + control.label() + " has no common leg on a rail");
    }
    if (places.count() == 1) {
      return Draft.plain(module, control.label(), new ControlEdit.CommonOpen(control.label()));
    }
    ControlContact at = places.contact(1);
    if (!at.control().equals(control.label())) {
      throw places.wrong(at.label() + " is no throw of " + control.label());
    }
    return Draft.plain(
        module,
        control.label() + " " + at.label(),
        new ControlEdit.CommonAtThrow(control.label(), at.label()));
  }

  Draft contactBounces() {
    places.need(2, "a control and how often it closes");
    ControlContact contact = places.contact(0);
    String times = places.label(1);
    ControlEdit.ControlFault fault =
        switch (times) {
          case "any" -> ControlEdit.ControlFault.BOUNCES_ANYHOW;
          case "2" -> ControlEdit.ControlFault.BOUNCES_TWICE;
          case "3" -> ControlEdit.ControlFault.BOUNCES_THREE_TIMES;
          case "4" -> ControlEdit.ControlFault.BOUNCES_FOUR_TIMES;
          default -> throw places.wrong("a contact closes any, 2, 3 or 4 times, got " + times);
        };
    if (fault == ControlEdit.ControlFault.BOUNCES_ANYHOW
        && module.contact(contact.label()).isEmpty()) {
      throw places.wrong("a contact between lines closes 2, 3 or 4 times, got any");
    }
    return Draft.plain(
        module,
        contact.label() + " " + times,
        new ControlEdit.ControlChanged(contact.control(), contact.label(), fault));
  }

  Draft supplyReversed() {
    places.need(0, "no place");
    Edit edit = new SupplyEdit.SupplyReversed();
    return new Draft(
        "",
        List.of(edit),
        edit.words(module),
        Draft.MAY_BE_HOT
            + edit.repair(module)
            + ". Treat every part as suspect until it has been tested.");
  }

  Draft railsJoined() {
    places.need(0, "no place");
    Edit edit = new SupplyEdit.RailsJoined();
    return new Draft(
        "", List.of(edit), edit.words(module), Draft.MAY_BE_HOT + edit.repair(module) + ".");
  }

  private static Edit lampEdit(String lamp, LampEdit.LampFault fault) {
    return new LampEdit.LampChanged(lamp, fault);
  }
}

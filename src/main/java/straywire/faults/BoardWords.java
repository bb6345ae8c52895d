package straywire.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.logic.PinSpec;
import straywire.module.ChangeOver;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Pass;
import straywire.module.Point;

/** Names what is on the board the way a technician says it: {@code U1 pin 3 (/WE)}. */
final class BoardWords {
  private final Module module;

  BoardWords(Module module) {
    this.module = module;
  }

  String end(End end) {
    return switch (end.kind()) {
      case PIN -> end.label() + " pin " + end.pin() + " (" + pin(end).name() + ")";
      case CONTROL -> control(end.label());
      case THROW -> contact(end.label());
      case LAMP -> lamp(end.label());
      case RESISTOR ->
          (end.pin() > 0 ? "end " + end.pin() + " of resistor " : "resistor ") + end.label();
      case RAIL -> rail(end.label());
      case PORT -> "port line " + end.label();
    };
  }

  String point(Point point) {
    boolean row = point.end().kind() == End.Kind.PIN && !point.leg();
    return row ? "the row of " + end(point.end()) : end(point.end());
  }

  String jumper(Jumper jumper) {
    return "jumper from " + end(jumper.from()) + " to " + end(jumper.to());
  }

  String control(String label) {
    Control control = module.controls().get(label);
    boolean button = control.kind() == Control.Kind.BUTTON;
    return titled((button ? "button " : "switch ") + label, label, control.title());
  }

  /** A contact, by its control alone when that has no other. */
  String contact(String label) {
    Optional<Pass> pass = module.pass(label);
    if (pass.isPresent()) {
      return "throw " + label + " of " + control(pass.get().control());
    }
    Contact contact = module.contact(label).orElseThrow();
    String control = control(contact.control());
    Optional<ChangeOver> other = module.controls().get(contact.control()).changeOver();
    if (other.isEmpty()) {
      return control;
    }
    return other.get().commonOnRail()
        ? "throw " + label + " of " + control
        : "contact to " + contact.closesTo() + " of " + control;
  }

  String lamp(String label) {
    Lamp lamp = module.lamps().get(label);
    return titled("lamp " + label, label, lamp.title());
  }

  String rail(String label) {
    boolean supply = module.rail(label).orElseThrow().supply();
    return "the " + (supply ? "supply" : "ground") + " rail " + label;
  }

  /** The part and its type, such as {@code U3 (74x04, LS)}. */
  String part(String label) {
    Fitted fitted = module.parts().get(label);
    return label + " (" + fitted.part().type() + ", " + fitted.family().name() + ")";
  }

  String exchange(String label) {
    Fitted fitted = module.parts().get(label);
    return "Exchange "
        + label
        + " for a known good "
        + fitted.part().type()
        + " of family "
        + fitted.family().name();
  }

  /**
   * Where the legs among {@code ends} are, as a tail to a sentence; empty when there is none. With
   * several, each place is led by its part. Parts with one row of legs are left out.
   */
  String where(List<End> ends) {
    List<End> pins = ends.stream().filter(this::inTwoRows).distinct().toList();
    if (pins.isEmpty()) {
      return "";
    }
    List<String> places = new ArrayList<>();
    for (End pin : pins) {
      String place =
          LegPlace.of(pin.pin(), module.parts().get(pin.label()).part().pinCount()).words();
      places.add(pins.size() == 1 ? place : pin.label() + " " + place);
    }
    return ": " + String.join("; ", places) + ", " + LegPlace.VIEW;
  }

  /** True for a leg of a two-row part: its count of legs is even. */
  private boolean inTwoRows(End end) {
    return end.kind() == End.Kind.PIN && module.parts().get(end.label()).part().pinCount() % 2 == 0;
  }

  List<End> pins(String part) {
    return module.parts().get(part).part().pins().stream()
        .map(p -> End.pin(part, p.number()))
        .toList();
  }

  PinSpec pin(End end) {
    return module.parts().get(end.label()).part().pin(end.pin());
  }

  private static String titled(String name, String label, String title) {
    return title.isEmpty() || title.equals(label) ? name : name + " (" + title + ")";
  }

  static String capitalised(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  static String decapitalised(String words) {
    return Character.toLowerCase(words.charAt(0)) + words.substring(1);
  }
}

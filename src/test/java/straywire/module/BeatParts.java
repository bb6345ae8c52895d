package straywire.module;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;
import straywire.parts.Family;
import straywire.parts.NoLogic;
import straywire.parts.Part;
import straywire.parts.PartLibrary;

/** The pins of the three part types of the beat memory, enough to read its module file. */
final class BeatParts implements PartLibrary {
  private static final Family.Band BAND = new Family.Band(0, 0, 0);

  /** Pin names in pin order, each with a letter for its kind. */
  private static final List<Part> PARTS =
      List.of(
          part("74x04", "1A:i 1Y:o 2A:i 2Y:o 3A:i 3Y:o GND:g 4Y:o 4A:i 5Y:o 5A:i 6Y:o 6A:i VCC:v"),
          part(
              "74x189",
              "A0:i /CS:i /WE:i D1:i /Q1:z D2:i /Q2:z GND:g /Q3:z D3:i /Q4:z D4:i A3:i A2:i A1:i"
                  + " VCC:v"),
          part(
              "74x245",
              "DIR:i A1:b A2:b A3:b A4:b A5:b A6:b A7:b A8:b GND:g B8:b B7:b B6:b B5:b B4:b B3:b"
                  + " B2:b B1:b /OE:i VCC:v"),
          part("twin", "A:i GND:g GND:g VCC:v"));

  private static Part part(String type, String pins) {
    List<PinSpec> specs = new ArrayList<>();
    for (String pin : pins.split(" ")) {
      String[] nameAndKind = pin.split(":");
      specs.add(new PinSpec(specs.size() + 1, nameAndKind[0], kind(nameAndKind[1])));
    }
    return new Part(type, type, "", specs, false, new NoLogic());
  }

  private static PinKind kind(String letter) {
    return switch (letter) {
      case "i" -> PinKind.INPUT;
      case "o" -> PinKind.OUTPUT;
      case "z" -> PinKind.TRISTATE;
      case "b" -> PinKind.BIDIRECTIONAL;
      case "g" -> PinKind.GROUND;
      default -> PinKind.SUPPLY;
    };
  }

  @Override
  public Optional<Part> part(String type) {
    return PARTS.stream().filter(p -> p.type().equals(type)).findFirst();
  }

  @Override
  public Optional<Family> family(String name) {
    return families().contains(name)
        ? Optional.of(new Family(name, 5, 3, 6, 4, true, false, 0.8, 2.0, BAND, BAND, BAND))
        : Optional.empty();
  }

  @Override
  public List<String> types() {
    return PARTS.stream().map(Part::type).toList();
  }

  @Override
  public List<String> families() {
    return List.of("HC", "LS");
  }
}

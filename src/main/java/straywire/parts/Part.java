package straywire.parts;

import java.util.List;
import java.util.Optional;
import straywire.logic.PartLogic;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;

/**
 * A part type as its maker describes it.
 *
 * @param type trade number without family letters, such as {@code 74x189}
 * @param pins in pin order; pin n is at index n-1
 * @param bus true when outputs have the drive of a bus driver (240, 244, 245, 373 class)
 */
public record Part(
    String type, String title, String function, List<PinSpec> pins, boolean bus, PartLogic logic) {
  public Part {
    pins = List.copyOf(pins);
  }

  public int pinCount() {
    return pins.size();
  }

  public PinSpec pin(int number) {
    return pins.get(number - 1);
  }

  public Optional<PinSpec> pinNamed(String name) {
    return pins.stream().filter(p -> p.name().equals(name)).findFirst();
  }

  public int pinOf(PinKind kind) {
    return pins.stream().filter(p -> p.kind() == kind).findFirst().map(PinSpec::number).orElse(0);
  }
}

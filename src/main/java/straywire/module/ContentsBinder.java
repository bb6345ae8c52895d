package straywire.module;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import straywire.format.YamlValue;
import straywire.logic.PartLogic;
import straywire.logic.PinSpec;
import straywire.parts.Part;

/** Reads what a memory was programmed with. */
final class ContentsBinder {
  private static final String WRITE = "/WE";

  private ContentsBinder() {}

  /** Words by address, each as many bits as the memory is wide, high bit first. */
  static Contents read(Part part, YamlValue value) {
    PartLogic.Store store =
        part.logic()
            .store()
            .orElseThrow(
                () ->
                    value.wrong(
                        "a "
                            + part.type()
                            + " keeps nothing without power; contents belong to an EEPROM"));
    SortedMap<Integer, Long> words = new TreeMap<>();
    for (Map.Entry<String, YamlValue> line : value.fields().entrySet()) {
      words.put(address(line.getKey(), line.getValue(), store), word(line.getValue(), store));
    }
    if (words.isEmpty()) {
      throw value.wrong("write at least one word, such as 0: " + "0".repeat(store.bits()));
    }
    return new Contents(words);
  }

  private static int address(String written, YamlValue at, PartLogic.Store store) {
    if (!written.matches("0|[1-9][0-9]{0,5}") || Integer.parseInt(written) >= store.words()) {
      throw at.wrong(
          "an address is a number from 0 to " + (store.words() - 1) + ", got " + written);
    }
    return Integer.parseInt(written);
  }

  private static long word(YamlValue value, PartLogic.Store store) {
    String bits = value.word();
    if (!bits.matches("[01]{" + store.bits() + "}")) {
      throw value.wrong("expected " + store.bits() + " bits, high bit first, got " + bits);
    }
    return Long.parseLong(bits, 2);
  }

  /** Insists that the module cannot write a memory whose contents it states. */
  static void check(Module wired, Map<String, YamlValue> parts) {
    for (Fitted fitted : wired.parts().values()) {
      if (fitted.contents().known() && !writeIsTied(wired, fitted)) {
        throw parts
            .get(fitted.label())
            .fields()
            .get("contents")
            .wrong(
                "the module may write "
                    + fitted.label()
                    + ": tie its "
                    + WRITE
                    + " to a supply rail, or leave out contents");
      }
    }
  }

  private static boolean writeIsTied(Module wired, Fitted fitted) {
    List<PinSpec> write =
        fitted.part().pins().stream().filter(pin -> pin.name().equals(WRITE)).toList();
    return write.stream()
        .map(pin -> wired.netOf(End.pin(fitted.label(), pin.number())))
        .allMatch(net -> net.flatMap(wired::railOf).filter(RailSegment::supply).isPresent());
  }
}

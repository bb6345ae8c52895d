package straywire.pages;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import straywire.format.InputError;
import straywire.format.Nearest;
import straywire.logic.PinSpec;
import straywire.parts.Part;
import straywire.parts.PartLibrary;
import straywire.parts.PartNotes;

/** Finds part types by number, and by words about them. */
public final class PartSearch {
  private static final Pattern NO_WORD = Pattern.compile("[^\\p{Alnum}]+");

  /** Words of the bench for words of the titles. */
  private static final Map<String, String> SAME =
      Map.of(
          "mux", "multiplexer",
          "demux", "decoder",
          "demultiplexer", "decoder",
          "flipflop", "flip-flop",
          "one-shot", "monostable",
          "sram", "static RAM",
          "exor", "XOR",
          "tristate", "3-state",
          "three-state", "3-state");

  private final PartLibrary library;

  public PartSearch(PartLibrary library) {
    this.library = library;
  }

  /** All part types in the order of a shelf: the 74 series first, then by number. */
  public List<Part> all() {
    return library.types().stream()
        .sorted(PartOrder.BY_NUMBER)
        .map(type -> library.part(type).orElseThrow())
        .toList();
  }

  /**
   * The one part that a number means.
   *
   * @param asked such as {@code 74x189}, {@code 74189}, {@code SN74LS189N}, {@code LS189}, {@code
   *     189}
   * @throws InputError naming the nearest part when there is none
   */
  public Part numbered(String asked) {
    return find(asked)
        .orElseThrow(() -> new InputError(asked, 0, "no part has this number" + nearest(asked)));
  }

  private Optional<Part> find(String asked) {
    Optional<Part> exact =
        library.types().stream()
            .filter(type -> type.equalsIgnoreCase(asked.strip()))
            .findFirst()
            .flatMap(library::part);
    if (exact.isPresent()) {
      return exact;
    }
    return PartNumber.types(asked).stream()
        .filter(library.types()::contains)
        .findFirst()
        .flatMap(library::part);
  }

  private String nearest(String asked) {
    List<String> tried = new ArrayList<>(PartNumber.types(asked));
    tried.add(asked);
    return tried.stream()
        .flatMap(type -> nearestType(type).stream())
        .findFirst()
        .map(type -> "; nearest is " + type + " (" + library.part(type).orElseThrow().title() + ")")
        .orElse("; straywire part list shows all");
  }

  /** Of the types with few letters changed the one of the nearest number, else the nearest name. */
  private Optional<String> nearestType(String wrong) {
    return library.types().stream()
        .filter(type -> type.length() == wrong.length())
        .filter(type -> Nearest.to(wrong, List.of(type)).isPresent())
        .min(
            Comparator.comparingInt(
                    (String type) -> Math.abs(PartOrder.number(type) - PartOrder.number(wrong)))
                .thenComparing(PartOrder.BY_NUMBER))
        .or(() -> Nearest.to(wrong, library.types()));
  }

  /** How well a part fits; smaller is better. */
  private enum Place {
    NUMBER,
    TITLE,
    PIN,
    FUNCTION,
    NOTES,
    NOWHERE
  }

  private record Hit(Part part, int badness) {}

  /**
   * Parts that fit every word, best first. A word is a number, or the start of a word in title,
   * group, function or notes, or the name of a pin.
   *
   * @throws InputError when nothing fits, naming the nearest word that would
   */
  public List<Part> search(List<String> words) {
    List<String> wanted =
        words.stream()
            .flatMap(w -> Arrays.stream(w.strip().split("\\s+")))
            .map(w -> SAME.getOrDefault(w.toLowerCase(Locale.ROOT), w))
            .toList();
    List<Part> found =
        all().stream()
            .map(part -> new Hit(part, badness(part, wanted)))
            .filter(hit -> hit.badness() >= 0)
            // The order of the shelf stays among equals.
            .sorted(Comparator.comparingInt(Hit::badness))
            .map(Hit::part)
            .toList();
    if (found.isEmpty()) {
      throw new InputError(String.join(" ", words), 0, "no part fits" + hint(wanted));
    }
    return found;
  }

  private int badness(Part part, List<String> words) {
    int sum = 0;
    for (String word : words) {
      Place place = place(part, word);
      if (place == Place.NOWHERE) {
        return -1;
      }
      sum += place.ordinal();
    }
    return sum;
  }

  private Place place(Part part, String word) {
    if (find(word).filter(p -> p.type().equals(part.type())).isPresent()) {
      return Place.NUMBER;
    }
    Optional<PartNotes> notes = library.notes(part.type());
    if (holds(part.title() + " " + notes.map(n -> n.group().title()).orElse(""), word)) {
      return Place.TITLE;
    }
    if (part.pins().stream().anyMatch(pin -> isNamed(pin, word))) {
      return Place.PIN;
    }
    if (holds(part.function(), word)) {
      return Place.FUNCTION;
    }
    return notes.filter(n -> holds(text(n), word)).isPresent() ? Place.NOTES : Place.NOWHERE;
  }

  private static String text(PartNotes notes) {
    return notes.openInput()
        + " "
        + String.join(" ", notes.mistakes())
        + " "
        + String.join(" ", notes.disagreements());
  }

  private static boolean isNamed(PinSpec pin, String word) {
    return pin.name().equalsIgnoreCase(word)
        || pin.name().replace("/", "").equalsIgnoreCase(word.replace("/", ""));
  }

  /** Whether words follow each other in the text, the last one perhaps cut short. */
  private static boolean holds(String text, String word) {
    String plain = plain(word);
    return !plain.isBlank() && plain(text).contains(plain.stripTrailing());
  }

  /** Small letters, one space before each word and one at the end. */
  private static String plain(String text) {
    return " " + NO_WORD.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ").strip() + " ";
  }

  private String hint(List<String> words) {
    Set<String> known = new TreeSet<>();
    for (Part part : all()) {
      known.addAll(Arrays.asList(plain(part.title() + " " + part.function()).strip().split(" ")));
    }
    for (String word : words) {
      if (all().stream().allMatch(part -> place(part, word) == Place.NOWHERE)) {
        return Nearest.to(word, known)
            .map(near -> "; nearest to " + word + " is " + near)
            .orElse("; no part has the word " + word);
      }
    }
    return "; each word fits some part, but none fits all";
  }
}

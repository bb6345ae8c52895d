package straywire.module;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import straywire.format.BadEntry;
import straywire.format.Nearest;

/**
 * Spreads written values, such as {@code address 0001} or {@code R3 dim}, over single controls or
 * lamps, and gathers them again: a word is written when all its members are there, in the order of
 * the module's words; what is left follows by label.
 *
 * @param <S> level of a control, or state of a lamp
 */
abstract class WordValues<S> {
  /** A word's value in hex or decimal; without a sign before it a value is one mark a place. */
  private static final Pattern NUMBER = Pattern.compile("0[xX][0-9a-fA-F]{1,16}|=[0-9]{1,18}");

  private final String what;
  private final List<Word> words;
  private final List<String> singles;

  private WordValues(String what, List<Word> words, List<String> singles) {
    this.what = what;
    this.words = words;
    this.singles = singles;
  }

  /** Levels of switches; true is high. */
  static WordValues<Boolean> ofControls(Module module) {
    List<String> switches =
        module.controls().values().stream()
            .filter(c -> c.kind() == Control.Kind.SWITCH)
            .map(Control::label)
            .toList();
    return new WordValues<>("switch", module.controlWords(), switches) {
      @Override
      Optional<Boolean> ofMark(char mark) {
        return mark == '1' || mark == '0' ? Optional.of(mark == '1') : Optional.empty();
      }

      @Override
      char mark(Boolean high) {
        return high ? '1' : '0';
      }

      @Override
      String marks() {
        return "write 1 high, 0 low";
      }

      @Override
      Optional<Boolean> ofName(String name) {
        return name.equals("high") || name.equals("low")
            ? Optional.of(name.equals("high"))
            : Optional.empty();
      }

      @Override
      String name(Boolean high) {
        return high ? "high" : "low";
      }

      @Override
      List<String> names() {
        return List.of("high", "low");
      }

      @Override
      void refuse(String label) {
        Control control = module.controls().get(label);
        if (control != null) {
          throw new BadEntry(label + " is a button; press it, or hold and release it");
        }
      }
    };
  }

  static WordValues<LampState> ofLamps(Module module) {
    List<String> lamps = List.copyOf(module.lamps().keySet());
    return new WordValues<>("lamp", module.lampWords(), lamps) {
      @Override
      Optional<LampState> ofMark(char mark) {
        return LampState.ofMark(mark);
      }

      @Override
      char mark(LampState state) {
        return state.mark();
      }

      @Override
      String marks() {
        return "write 1 lit, 0 dark, d dim, f flickering, - not looked at";
      }

      @Override
      Optional<LampState> ofName(String name) {
        return LampState.ofWord(name);
      }

      @Override
      String name(LampState state) {
        return state.word();
      }

      @Override
      List<String> names() {
        return Arrays.stream(LampState.values()).map(LampState::word).toList();
      }

      @Override
      void refuse(String label) {}
    };
  }

  abstract Optional<S> ofMark(char mark);

  abstract char mark(S state);

  abstract String marks();

  abstract Optional<S> ofName(String name);

  abstract String name(S state);

  /** Values of a single one, as written. */
  abstract List<String> names();

  /** Throws when there is a better thing to say of a label than that it is unknown. */
  abstract void refuse(String label);

  /** The name of a state that may be given as its mark. */
  String nameOf(String nameOrMark) {
    return nameOrMark.length() == 1
        ? ofMark(nameOrMark.charAt(0)).map(this::name).orElse(nameOrMark)
        : nameOrMark;
  }

  List<String> singles() {
    return singles;
  }

  /** Labels of words and of single ones. */
  List<String> labels() {
    List<String> labels = new ArrayList<>();
    words.forEach(word -> labels.add(word.label()));
    labels.addAll(singles);
    return labels;
  }

  Optional<Word> word(String label) {
    return words.stream().filter(w -> w.label().equals(label)).findFirst();
  }

  /**
   * @throws BadEntry when a label is unknown, a value does not fit, or a member is given twice
   */
  Map<String, S> spread(Map<String, String> written) {
    Map<String, S> spread = new TreeMap<>();
    written.forEach(
        (label, value) ->
            one(label, value)
                .forEach(
                    (single, state) -> {
                      if (spread.put(single, state) != null) {
                        throw new BadEntry(single + " is given twice");
                      }
                    }));
    if (spread.isEmpty()) {
      throw new BadEntry("no " + what + " is named" + Nearest.hint("", labels()));
    }
    return spread;
  }

  private Map<String, S> one(String label, String value) {
    Optional<Word> word = word(label);
    if (word.isPresent()) {
      return ofWord(word.get(), value);
    }
    if (!singles.contains(label)) {
      refuse(label);
      throw new BadEntry(
          "no " + what + " or word of them is labelled " + label + Nearest.hint(label, labels()));
    }
    S state =
        ofName(value)
            .orElseThrow(
                () ->
                    new BadEntry(
                        label + ": " + value + " is not one of " + String.join(", ", names())));
    return Map.of(label, state);
  }

  private Map<String, S> ofWord(Word word, String written) {
    List<String> members = word.members();
    String value = NUMBER.matcher(written).matches() ? binary(word, written) : written;
    if (value.length() != members.size()) {
      throw new BadEntry(
          word.label()
              + " has "
              + members.size()
              + " places, high bit first ("
              + String.join(" ", members)
              + "), got "
              + value.length()
              + " in \""
              + value
              + "\"");
    }
    Map<String, S> states = new LinkedHashMap<>();
    for (int i = 0; i < members.size(); i++) {
      char mark = value.charAt(i);
      S state =
          ofMark(mark)
              .orElseThrow(
                  () ->
                      new BadEntry(
                          word.label() + ": \"" + value + "\" has a '" + mark + "'; " + marks()));
      states.put(members.get(i), state);
    }
    return states;
  }

  /** A number, such as {@code 0x96} or {@code =150}, as one mark a place. */
  private static String binary(Word word, String number) {
    int places = word.members().size();
    BigInteger value =
        number.startsWith("=")
            ? new BigInteger(number.substring(1))
            : new BigInteger(number.substring(2), 16);
    if (value.bitLength() > places) {
      throw new BadEntry(
          word.label()
              + " has "
              + places
              + " places, for 0 to "
              + BigInteger.ONE.shiftLeft(places).subtract(BigInteger.ONE)
              + ", got "
              + number);
    }
    String bits = value.toString(2);
    return "0".repeat(places - bits.length()) + bits;
  }

  /** The inverse of {@link #spread}. */
  Map<String, String> gather(Map<String, S> states) {
    Map<String, S> left = new TreeMap<>(states);
    Map<String, String> written = new LinkedHashMap<>();
    for (Word word : words) {
      if (left.keySet().containsAll(word.members())) {
        StringBuilder marks = new StringBuilder();
        word.members().forEach(m -> marks.append(mark(left.remove(m))));
        written.put(word.label(), marks.toString());
      }
    }
    left.forEach((label, state) -> written.put(label, name(state)));
    return written;
  }
}

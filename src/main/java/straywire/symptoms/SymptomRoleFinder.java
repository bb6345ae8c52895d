package straywire.symptoms;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import straywire.module.Control;
import straywire.module.Entry;
import straywire.module.Module;
import straywire.module.Word;
import straywire.sim.BoardState;
import straywire.sim.Boards;
import straywire.sim.Signal;
import straywire.sim.Variation;
import straywire.sim.Wiring;

/**
 * Finds what buttons and switches do by working the module as meant: a store is a button after
 * which a word of lamps keeps what other switches say; an address is a switch word that brings an
 * earlier word back; a gate is a switch that lets go of all lines of a word.
 */
final class SymptomRoleFinder {
  private static final long ALTERNATING = 0x6666666666666666L;

  /** Presses in a row that each change the word, for a button that takes it on. */
  private static final int STEPS = 3;

  private static final Set<Signal> LET_GO =
      EnumSet.of(Signal.NOTHING, Signal.OPEN_INPUT, Signal.PULLED_LOW, Signal.PULLED_HIGH);

  private final Module module;
  private final Boards board;

  /** Switch words, and each switch that is in none as a word of its own. */
  private final List<Word> hands = new ArrayList<>();

  private final List<String> loose = new ArrayList<>();

  SymptomRoleFinder(Wiring wiring) {
    module = wiring.module();
    board = new Boards(wiring, List.of(new Variation()));
    Set<String> inWords = new LinkedHashSet<>();
    for (Word word : module.controlWords()) {
      List<String> switches = word.members().stream().filter(this::isSwitch).toList();
      if (!switches.isEmpty()) {
        hands.add(new Word(word.label(), switches));
        inWords.addAll(switches);
      }
    }
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH && !inWords.contains(control.label())) {
        loose.add(control.label());
        hands.add(new Word(control.label(), List.of(control.label())));
      }
    }
  }

  private boolean isSwitch(String control) {
    return module.controls().get(control).kind() == Control.Kind.SWITCH;
  }

  /** The roles for every lamp word of up to 64 lamps, in the order of the module. */
  List<SymptomRoles> find() {
    List<Word> words = module.lampWords();
    if (words.isEmpty() && !module.lamps().isEmpty()) {
      words = List.of(new Word("", List.copyOf(module.lamps().keySet())));
    }
    List<SymptomRoles> roles = new ArrayList<>();
    for (Word word : words) {
      if (word.members().size() <= Long.SIZE) {
        Optional<SymptomRoles.Store> store = store(word);
        roles.add(new SymptomRoles(word, store, gate(word, store), steps(word, store)));
      }
    }
    return roles;
  }

  private Optional<SymptomRoles.Store> store(Word lamps) {
    List<Map<String, Boolean>> modes = new ArrayList<>();
    modes.add(Map.of());
    for (String control : loose) {
      modes.add(Map.of(control, !module.controls().get(control).restLevel()));
    }
    for (Map<String, Boolean> mode : modes) {
      for (Control control : module.controls().values()) {
        if (control.kind() == Control.Kind.BUTTON) {
          String button = control.label();
          List<String> data = new ArrayList<>();
          for (Word hand : hands) {
            if (!mode.containsKey(hand.label()) && keeps(lamps, mode, button, hand)) {
              add(data, hand.members());
            }
          }
          if (!data.isEmpty()) {
            List<String> address = address(lamps, mode, button, data);
            return Optional.of(new SymptomRoles.Store(button, data, address, mode));
          }
        }
      }
    }
    return Optional.empty();
  }

  private static void add(List<String> switches, List<String> more) {
    for (String control : more) {
      if (!switches.contains(control)) {
        switches.add(control);
      }
    }
  }

  /** After a press the lamps keep what the word said, and another press takes another word in. */
  private boolean keeps(Word lamps, Map<String, Boolean> mode, String button, Word hand) {
    long word = pattern(hand.members());
    long other = ~word & SymptomRoles.ones(hand.members().size());
    BoardState state = board.move(board.powerUp(board.off()), mode);
    state = write(state, hand.members(), word, button);
    OptionalLong written = picture(state, lamps);
    state = board.move(state, SymptomRoles.setting(hand.members(), other));
    OptionalLong kept = picture(state, lamps);
    OptionalLong rewritten = picture(board.press(state, button), lamps);
    return written.isPresent()
        && written.equals(kept)
        && rewritten.isPresent()
        && !rewritten.equals(written);
  }

  private static long pattern(List<String> switches) {
    return switches.size() == 1 ? 1 : ALTERNATING & SymptomRoles.ones(switches.size());
  }

  private BoardState write(BoardState state, List<String> data, long word, String button) {
    return board.press(board.move(state, SymptomRoles.setting(data, word)), button);
  }

  private List<String> address(
      Word lamps, Map<String, Boolean> mode, String button, List<String> data) {
    List<String> address = new ArrayList<>();
    long word = pattern(data);
    for (Word hand : hands) {
      if (hand.members().stream().noneMatch(c -> data.contains(c) || mode.containsKey(c))) {
        Map<String, Boolean> first = SymptomRoles.setting(hand.members(), 0);
        BoardState state = board.move(board.powerUp(board.off()), mode);
        state = write(board.move(state, first), data, word, button);
        OptionalLong written = picture(state, lamps);
        state = board.move(state, SymptomRoles.setting(hand.members(), -1L));
        state = write(state, data, ~word, button);
        OptionalLong elsewhere = picture(state, lamps);
        OptionalLong back = picture(board.move(state, first), lamps);
        if (back.isPresent() && back.equals(written) && !elsewhere.equals(written)) {
          add(address, hand.members());
        }
      }
    }
    return address;
  }

  /** What the lamps show, the first one highest; empty when one of them may be either. */
  private OptionalLong picture(BoardState state, Word lamps) {
    long picture = 0;
    for (String lamp : lamps.members()) {
      Boards.Glow glow = board.glow(state, 0, lamp);
      if (glow.lit() == 0 && glow.dark() == 0) {
        return OptionalLong.empty();
      }
      picture = picture << 1 | glow.lit();
    }
    return OptionalLong.of(picture);
  }

  private Optional<SymptomRoles.Gate> gate(Word lamps, Optional<SymptomRoles.Store> store) {
    BoardState state = board.powerUp(board.off());
    Set<String> taken = new LinkedHashSet<>();
    if (store.isPresent()) {
      List<String> data = store.get().data();
      state = write(board.move(state, store.get().mode()), data, pattern(data), button(store));
      taken.addAll(data);
      taken.addAll(store.get().address());
    }
    for (String control : loose) {
      if (!taken.contains(control)) {
        boolean low = released(board.move(state, setTo(control, false)), lamps);
        boolean high = released(board.move(state, setTo(control, true)), lamps);
        if (low != high) {
          return Optional.of(new SymptomRoles.Gate(control, low));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * The button of the by-hand exercise that changes the word at several presses in a row, whatever
   * switches are moved in between. A button that only takes in what switches say is none.
   */
  private String steps(Word lamps, Optional<SymptomRoles.Store> store) {
    Map<String, Integer> runs = new TreeMap<>();
    BoardState state = board.off();
    for (Entry entry : module.exercise()) {
      BoardState before = state;
      state = board.after(state, entry);
      if (entry instanceof Entry.Press press) {
        OptionalLong then = before.powered() ? picture(before, lamps) : OptionalLong.empty();
        OptionalLong now = picture(state, lamps);
        int run = runs.getOrDefault(press.button(), 0);
        boolean changed = then.isPresent() && now.isPresent() && !then.equals(now);
        runs.clear();
        runs.put(press.button(), changed ? run + 1 : 0);
        Map<String, Boolean> controls = before.controls();
        boolean takesIn =
            store
                .filter(s -> s.button().equals(press.button()))
                .filter(s -> controls.entrySet().containsAll(s.mode().entrySet()))
                .isPresent();
        if (changed && run + 1 == STEPS && !takesIn) {
          return press.button();
        }
      }
    }
    return "";
  }

  private static String button(Optional<SymptomRoles.Store> store) {
    return store.map(SymptomRoles.Store::button).orElseThrow();
  }

  private static Map<String, Boolean> setTo(String control, boolean level) {
    Map<String, Boolean> setting = new TreeMap<>();
    setting.put(control, level);
    return setting;
  }

  private boolean released(BoardState state, Word lamps) {
    for (String lamp : lamps.members()) {
      long[] signals = board.lampSignals(state, 0, lamp);
      for (Signal signal : Signal.values()) {
        if (signals[signal.ordinal()] != 0 && !LET_GO.contains(signal)) {
          return false;
        }
      }
    }
    return true;
  }
}

package straywire.steps;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import straywire.faults.Edit;
import straywire.faults.Hypothesis;
import straywire.faults.WireEdit;
import straywire.logic.PinKind;
import straywire.module.Control;
import straywire.module.ControlContact;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.Fitted;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Point;
import straywire.module.Word;
import straywire.observe.Instruments;
import straywire.observe.Step;
import straywire.ranking.AfterRepair;
import straywire.sim.BoardState;

/**
 * The steps that are considered, from one stated generator: every single control flipped, every
 * value of a short word, telling patterns of a long one, each with and without each button, the
 * settings of the by-hand exercise; a reading at every leg and row that a live hypothesis touches;
 * a look at everything where one would show; a beep across every contact and wire in question; the
 * exchange of each suspected part.
 */
final class StepMenu {
  /** Words up to this many bits are tried at every value. */
  private static final int SHORT_WORD = 4;

  private final Module module;
  private final Instruments instruments;
  private final Islands islands;

  /** What a hand closes at each terminal. */
  private final Map<End, List<ControlContact>> contactsAt = new HashMap<>();

  private final Map<End, Set<End>> terminalsAt = new HashMap<>();

  StepMenu(Module module, Instruments instruments) {
    this.module = module;
    this.instruments = instruments;
    islands = new Islands(module);
    for (ControlContact contact : module.everyContact()) {
      for (End end : contact.ends()) {
        contactsAt.computeIfAbsent(end, e -> new ArrayList<>()).add(contact);
      }
    }
  }

  /**
   * Settings worth trying from a state, each with a button to press or none; no doubles. Only what
   * is joined to something that a live hypothesis changes is moved, and a button is pressed only
   * after controls on its own island.
   */
  List<Step.Work> work(BoardState state, List<Hypothesis> live) {
    Set<Integer> inQuestion = islands.touched(live);
    Map<Step.Work, Boolean> steps = new LinkedHashMap<>();
    List<String> words = module.lampWords().stream().map(Word::label).toList();
    List<Map<String, Boolean>> settings = new ArrayList<>();
    settings.add(Map.of());
    for (Control control : module.controls().values()) {
      if (control.kind() == Control.Kind.SWITCH) {
        settings.add(Map.of(control.label(), !state.controls().get(control.label())));
      }
    }
    for (Word word : module.controlWords()) {
      for (long value : values(word, state)) {
        settings.add(setting(word, value));
      }
    }
    for (Map<String, Boolean> setting : settings) {
      Map<String, Boolean> moves = moves(state, setting, inQuestion);
      Set<Integer> moved = islands.of(moves.keySet());
      add(steps, new Step.Work(moves, Optional.empty(), words));
      for (String button : buttons()) {
        int at = islands.of(button);
        if (inQuestion.contains(at) && (moved.isEmpty() || moved.contains(at))) {
          add(steps, new Step.Work(moves, Optional.of(button), words));
        }
      }
    }
    exercise(state, words, inQuestion).forEach(step -> add(steps, step));
    steps.remove(new Step.Work(Map.of(), Optional.empty(), words));
    return new ArrayList<>(steps.keySet());
  }

  private static void add(Map<Step.Work, Boolean> steps, Step.Work step) {
    steps.putIfAbsent(step, true);
  }

  private List<String> buttons() {
    return module.controls().values().stream()
        .filter(c -> c.kind() == Control.Kind.BUTTON)
        .map(Control::label)
        .toList();
  }

  /** Only what has to be moved, on the islands in question. */
  private Map<String, Boolean> moves(
      BoardState state, Map<String, Boolean> setting, Set<Integer> inQuestion) {
    Map<String, Boolean> moves = new TreeMap<>(setting);
    moves
        .entrySet()
        .removeIf(
            move ->
                state.controls().get(move.getKey()).equals(move.getValue())
                    || !inQuestion.contains(islands.of(move.getKey())));
    return moves;
  }

  private List<Long> values(Word word, BoardState state) {
    int bits = word.members().size();
    Set<Long> values = new LinkedHashSet<>();
    long all = bits == Long.SIZE ? -1L : (1L << bits) - 1;
    if (bits <= SHORT_WORD) {
      for (long value = 0; value <= all; value++) {
        values.add(value);
      }
    } else {
      long now = value(word, state);
      values.add(~now & all);
      values.add(0L);
      values.add(all);
      values.add(0x5555555555555555L & all);
      values.add(0xAAAAAAAAAAAAAAAAL & all);
      values.add(0x3333333333333333L & all);
      values.add(0x0F0F0F0F0F0F0F0FL & all);
      for (int bit = 0; bit < bits; bit++) {
        values.add(1L << bit);
      }
    }
    return List.copyOf(values);
  }

  private static long value(Word word, BoardState state) {
    long value = 0;
    for (String member : word.members()) {
      value = value << 1 | (state.controls().get(member) ? 1 : 0);
    }
    return value;
  }

  private static Map<String, Boolean> setting(Word word, long value) {
    Map<String, Boolean> setting = new TreeMap<>();
    int bits = word.members().size();
    for (int i = 0; i < bits; i++) {
      setting.put(word.members().get(i), (value >>> (bits - 1 - i) & 1) != 0);
    }
    return setting;
  }

  /** The settings of the by-hand exercise, as far as they are one set, one press or both. */
  private List<Step.Work> exercise(BoardState state, List<String> words, Set<Integer> inQuestion) {
    List<Step.Work> steps = new ArrayList<>();
    Map<String, Boolean> set = new TreeMap<>(state.controls());
    boolean changed = false;
    for (Entry entry : module.exercise()) {
      if (entry instanceof Entry.Set e) {
        set.putAll(e.levels());
        changed = true;
      } else if (entry instanceof Entry.Press e) {
        if (inQuestion.contains(islands.of(e.button()))) {
          steps.add(new Step.Work(moves(state, set, inQuestion), Optional.of(e.button()), words));
        }
        changed = false;
      } else if (entry instanceof Entry.Look && changed) {
        steps.add(new Step.Work(moves(state, set, inQuestion), Optional.empty(), words));
        changed = false;
      }
    }
    return steps;
  }

  /** Points that an edit of a live hypothesis touches, with all that is joined to them as meant. */
  List<Point> points(List<Hypothesis> live) {
    Set<Point> points = new TreeSet<>();
    if (!instruments.meter() && !instruments.logicProbe()) {
      return List.of();
    }
    for (Hypothesis hypothesis : live) {
      for (Edit edit : hypothesis.edits()) {
        for (End end : edit.touches(module)) {
          addWithNet(points, end);
        }
      }
    }
    return List.copyOf(points);
  }

  /** Rounds of the meter over the supply legs, and over the ground legs, of all chips. */
  List<Step.MeasureRound> rounds() {
    List<Step.MeasureRound> rounds = new ArrayList<>();
    for (PinKind kind : List.of(PinKind.GROUND, PinKind.SUPPLY)) {
      List<Point> legs = new ArrayList<>();
      for (Fitted fitted : module.parts().values()) {
        int pin = fitted.part().pinOf(kind);
        if (fitted.fitted() && pin > 0) {
          legs.add(new Point(End.pin(fitted.label(), pin), true));
        }
      }
      if (instruments.meter() && legs.size() > 1) {
        rounds.add(new Step.MeasureRound(legs));
      }
    }
    return rounds;
  }

  private void addWithNet(Set<Point> points, End end) {
    addPoints(points, end);
    module
        .netOf(end)
        .filter(net -> !net.onRail())
        .ifPresent(net -> net.ends().forEach(other -> addPoints(points, other)));
  }

  private static void addPoints(Set<Point> points, End end) {
    if (end.kind() == End.Kind.PIN) {
      points.add(new Point(end, true));
    }
    points.add(new Point(end, false));
  }

  /** Things at which a careful look would show a live hypothesis. */
  List<String> subjects(List<Hypothesis> live) {
    Set<String> subjects = new TreeSet<>();
    if (instruments.eyes()) {
      for (Hypothesis hypothesis : live) {
        hypothesis.edits().forEach(edit -> subjects.addAll(edit.seenAt(module)));
      }
    }
    return List.copyOf(subjects);
  }

  /**
   * Contacts and wires in question, for a beep with power off.
   *
   * @param controls where they stand
   */
  List<Step.Beep> beeps(List<Hypothesis> live, Map<String, Boolean> controls) {
    Set<Step.Beep> beeps = new LinkedHashSet<>();
    if (instruments.meter()) {
      for (Hypothesis hypothesis : live) {
        for (Edit edit : hypothesis.edits()) {
          List<End> ends = edit.touches(module);
          for (int i = 0; i < ends.size(); i++) {
            Point row = new Point(ends.get(i), false);
            if (ends.get(i).kind() == End.Kind.PIN) {
              beeps.add(beep(new Point(ends.get(i), true), row, controls));
            }
            if (i > 0) {
              beeps.add(beep(new Point(ends.get(i - 1), false), row, controls));
            }
          }
          if (edit instanceof WireEdit.EndMoved moved) {
            // Joined only when the wire is whole and ends there.
            beeps.add(
                beep(
                    new Point(moved.jumper().other(moved.end()), false),
                    new Point(moved.now(), false),
                    controls));
          }
        }
      }
    }
    return List.copyOf(beeps);
  }

  private Step.Beep beep(Point from, Point to, Map<String, Boolean> controls) {
    Set<End> nearFrom = joined(from.end());
    Set<End> nearTo = joined(to.end());
    if (nearFrom.equals(nearTo)) {
      // On one line, or on lines without contacts: what is between the two is wires.
      return new Step.Beep(from, to);
    }
    Map<String, Boolean> set = new TreeMap<>();
    for (Set<End> near : List.of(nearFrom, nearTo)) {
      for (End end : near) {
        for (ControlContact contact : contactsAt.get(end)) {
          boolean position = controls.get(contact.control());
          if (position == contact.closedWhenHigh()
              && module.controls().get(contact.control()).kind() == Control.Kind.SWITCH
              && between(contact.ends(), nearFrom, nearTo)) {
            set.put(contact.control(), !position);
          }
        }
      }
    }
    return new Step.Beep(from, to, Collections.unmodifiableMap(set));
  }

  /** A contact to a rail is, wherever it is; one between lines when they are the two. */
  private static boolean between(List<End> ends, Set<End> nearFrom, Set<End> nearTo) {
    if (ends.size() == 1) {
      return true;
    }
    return (nearFrom.contains(ends.get(0)) && nearTo.contains(ends.get(1)))
        || (nearFrom.contains(ends.get(1)) && nearTo.contains(ends.get(0)));
  }

  /** Terminals of contacts that the wiring as meant joins to an end. */
  private Set<End> joined(End end) {
    return terminalsAt.computeIfAbsent(
        end,
        e -> {
          Set<End> terminals = new HashSet<>(module.netOf(e).map(Net::ends).orElse(List.of(e)));
          terminals.retainAll(contactsAt.keySet());
          return terminals;
        });
  }

  /** Buttons that can be held while a point is touched, with none first, and what to touch then. */
  Map<Optional<String>, List<Point>> holds(List<Point> points) {
    Map<Optional<String>, List<Point>> holds = new LinkedHashMap<>();
    if (!points.isEmpty()) {
      holds.put(Optional.empty(), points);
    }
    for (String button : buttons()) {
      int island = islands.of(button);
      List<Point> near =
          points.stream().filter(p -> islands.of(p.end().label()) == island).toList();
      if (!near.isEmpty()) {
        holds.put(Optional.of(button), near);
      }
    }
    return holds;
  }

  /** Parts that a live hypothesis changes inside, for an exchange. */
  List<String> parts(List<Hypothesis> live) {
    Set<String> parts = new TreeSet<>();
    if (instruments.spareParts()) {
      for (Hypothesis hypothesis : live) {
        for (String part : module.parts().keySet()) {
          if (AfterRepair.mends(new Entry.Exchanged(part), hypothesis)) {
            parts.add(part);
          }
        }
      }
    }
    return List.copyOf(parts);
  }
}

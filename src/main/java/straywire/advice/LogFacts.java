package straywire.advice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import straywire.advice.LogFact.Accepted;
import straywire.advice.LogFact.ContinuityCheck;
import straywire.advice.LogFact.Exchange;
import straywire.advice.LogFact.Expected;
import straywire.advice.LogFact.Held;
import straywire.advice.LogFact.Instrument;
import straywire.advice.LogFact.LampSeen;
import straywire.advice.LogFact.LeaderFact;
import straywire.advice.LogFact.Look;
import straywire.advice.LogFact.Noted;
import straywire.advice.LogFact.Noticed;
import straywire.advice.LogFact.Now;
import straywire.advice.LogFact.Pressed;
import straywire.advice.LogFact.ProbeReading;
import straywire.advice.LogFact.Reading;
import straywire.advice.LogFact.Repair;
import straywire.advice.LogFact.SuspectPart;
import straywire.advice.LogFact.WordSeen;
import straywire.advice.WiringFact.PinFact;
import straywire.module.BenchLog;
import straywire.module.ControlState;
import straywire.module.End;
import straywire.module.Entry;
import straywire.module.LampState;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Point;
import straywire.module.Word;
import straywire.sim.Signal;

/** Says what was done and noticed as flat facts, by walking the standing entries once. */
final class LogFacts {
  private final Module module;
  private final Map<End, String> netOf = new HashMap<>();
  private final List<String> addressControls = new ArrayList<>();
  private final List<LogFact> facts = new ArrayList<>();
  private ControlState state;
  private int last;
  private int poweredAt;

  private LogFacts(Module module, List<WiringFact> circuit) {
    this.module = module;
    this.state = ControlState.atStart(module);
    for (Net net : module.nets()) {
      net.ends().forEach(end -> netOf.put(end, net.name()));
    }
    TreeSet<String> addressNets = new TreeSet<>();
    for (WiringFact fact : circuit) {
      if (fact instanceof PinFact pin && pin.role() == PinRole.ADDRESS) {
        addressNets.add(pin.net());
      }
    }
    for (String control : module.controls().keySet()) {
      if (controlNets(control).stream().anyMatch(addressNets::contains)) {
        addressControls.add(control);
      }
    }
  }

  static List<LogFact> of(
      Module module,
      List<WiringFact> circuit,
      BenchLog log,
      Collection<Leader> leaders,
      Map<String, Signal> expected) {
    LogFacts facts = new LogFacts(module, circuit);
    for (BenchLog.Line line : log.standing()) {
      facts.add(line.number(), line.entry());
    }
    for (String button : facts.state.held()) {
      facts.controlNets(button).forEach(net -> facts.facts.add(new Held(button, net)));
    }
    facts.facts.add(new Now(facts.last, facts.state.power(), facts.poweredAt));
    leaders.forEach(facts::leader);
    new TreeMap<>(expected).forEach((net, signal) -> facts.facts.add(new Expected(net, signal)));
    return List.copyOf(facts.facts);
  }

  private void add(int number, Entry entry) {
    boolean powered = state.power();
    state = state.after(entry);
    last = number;
    if (entry instanceof Entry.Power power && power.on()) {
      poweredAt = number;
    } else if (entry instanceof Entry.Press press) {
      pressed(number, press.button());
    } else if (entry instanceof Entry.Hold hold) {
      pressed(number, hold.button());
    } else if (entry instanceof Entry.Seen seen) {
      seen(number, seen);
    } else {
      read(number, entry, powered);
    }
  }

  private void read(int number, Entry entry, boolean powered) {
    if (entry instanceof Entry.Measured m) {
      Point at = m.point();
      facts.add(
          new Reading(
              number,
              at.end().toString(),
              at.leg(),
              partOf(at.end()),
              net(at.end()),
              Band.of(m.volts()),
              m.volts()));
    } else if (entry instanceof Entry.Probed p) {
      End end = p.point().end();
      facts.add(
          new ProbeReading(
              number, end.toString(), p.point().leg(), partOf(end), net(end), p.shows()));
    } else if (entry instanceof Entry.Continuity c) {
      facts.add(
          new ContinuityCheck(number, c.from().toString(), c.to().toString(), c.joined(), powered));
    } else {
      tell(number, entry, powered);
    }
  }

  private void tell(int number, Entry entry, boolean powered) {
    if (entry instanceof Entry.Symptom s) {
      facts.add(new Noticed(number, s.symptom(), s.place(), s.answer()));
    } else if (entry instanceof Entry.Repaired r) {
      facts.add(new Repair(number, r.action(), powered));
    } else if (entry instanceof Entry.Exchanged e) {
      facts.add(new Exchange(number, e.part(), powered));
    } else if (entry instanceof Entry.Instruments i) {
      facts.removeIf(Instrument.class::isInstance);
      i.atHand().forEach(name -> facts.add(new Instrument(name)));
    } else if (entry instanceof Entry.Note note && note.accepts()) {
      facts.add(new Accepted(number));
    } else if (entry instanceof Entry.Note note && !note.ofTheTool()) {
      facts.add(new Noted(number, note.text()));
    }
  }

  private void seen(int number, Entry.Seen seen) {
    new TreeMap<>(seen.lamps())
        .forEach(
            (lamp, looks) ->
                facts.add(new LampSeen(number, lamp, net(new End(End.Kind.LAMP, lamp, 0)), looks)));
    for (Word word : module.lampWords()) {
      List<LampState> states =
          word.members().stream()
              .map(l -> seen.lamps().getOrDefault(l, LampState.NOT_LOOKED))
              .toList();
      if (states.stream().anyMatch(s -> s != LampState.NOT_LOOKED)) {
        String marks =
            states.stream().map(s -> String.valueOf(s.mark())).collect(Collectors.joining());
        facts.add(new WordSeen(number, word.label(), look(states), marks, settings()));
      }
    }
  }

  private static Look look(List<LampState> states) {
    TreeSet<LampState> kinds = new TreeSet<>(states);
    if (kinds.equals(new TreeSet<>(List.of(LampState.DARK)))) {
      return Look.ALL_DARK;
    }
    if (kinds.equals(new TreeSet<>(List.of(LampState.LIT)))) {
      return Look.ALL_LIT;
    }
    return kinds.equals(new TreeSet<>(List.of(LampState.LIT, LampState.DARK)))
        ? Look.MIXED
        : Look.UNSURE;
  }

  private void leader(Leader leader) {
    facts.add(
        new LeaderFact(
            leader.rank(), leader.hypothesis().mechanism(), leader.probability(), leader.fights()));
    leader.hypothesis().edits().stream()
        .flatMap(e -> e.touches(module).stream())
        .filter(end -> end.kind() == End.Kind.PIN)
        .map(End::label)
        .distinct()
        .sorted()
        .forEach(part -> facts.add(new SuspectPart(leader.rank(), part)));
  }

  private String settings() {
    return addressControls.stream()
        .map(c -> c + (state.levels().get(c) ? "=1" : "=0"))
        .collect(Collectors.joining(" "));
  }

  private void pressed(int number, String button) {
    controlNets(button).forEach(net -> facts.add(new Pressed(number, button, net, settings())));
  }

  /** The nets at the terminals of a control: one, or two of a change-over. */
  private List<String> controlNets(String control) {
    return module.controls().get(control).terminals().stream().map(this::net).distinct().toList();
  }

  private String net(End end) {
    return netOf.getOrDefault(end, "");
  }

  private static String partOf(End end) {
    return end.kind() == End.Kind.PIN ? end.label() : "";
  }
}

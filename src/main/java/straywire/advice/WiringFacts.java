package straywire.advice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import straywire.advice.WiringFact.BoardFact;
import straywire.advice.WiringFact.ContactFact;
import straywire.advice.WiringFact.ControlFact;
import straywire.advice.WiringFact.EndFact;
import straywire.advice.WiringFact.Inverter;
import straywire.advice.WiringFact.JumperEnd;
import straywire.advice.WiringFact.JumperFact;
import straywire.advice.WiringFact.LampFact;
import straywire.advice.WiringFact.LampWord;
import straywire.advice.WiringFact.PartFact;
import straywire.advice.WiringFact.PassFact;
import straywire.advice.WiringFact.PinFact;
import straywire.advice.WiringFact.Programmed;
import straywire.advice.WiringFact.RailFact;
import straywire.advice.WiringFact.ResistorBetween;
import straywire.advice.WiringFact.StatedNeighbours;
import straywire.advice.WiringFact.WithoutCapacitor;
import straywire.advice.WiringFact.WordMember;
import straywire.logic.PinSpec;
import straywire.module.ChangeOver;
import straywire.module.Contact;
import straywire.module.Control;
import straywire.module.ControlContact;
import straywire.module.End;
import straywire.module.Fitted;
import straywire.module.Jumper;
import straywire.module.Lamp;
import straywire.module.Module;
import straywire.module.Net;
import straywire.module.Pass;
import straywire.module.RailSegment;
import straywire.module.SeriesResistor;
import straywire.module.Word;

/** Says what is known of a module's wiring as flat facts. Parts not fitted yet are left out. */
public final class WiringFacts {
  private final Module module;
  private final Map<End, Net> netOf = new HashMap<>();
  private final List<PinFact> pins = new ArrayList<>();
  private final List<WiringFact> circuit = new ArrayList<>();
  private final List<WiringFact> layout = new ArrayList<>();

  private WiringFacts(Module module) {
    this.module = module;
    module.nets().forEach(net -> net.ends().forEach(end -> netOf.put(end, net)));
  }

  public static WiringFacts of(Module module) {
    WiringFacts facts = new WiringFacts(module);
    facts.circuit.add(new BoardFact(module.name()));
    List<Inverter> inverters = new ArrayList<>();
    for (Fitted fitted : module.parts().values()) {
      if (fitted.fitted()) {
        for (WiringFact fact : facts.part(fitted)) {
          facts.circuit.add(fact);
          if (fact instanceof Inverter inverter) {
            inverters.add(inverter);
          }
        }
      }
    }
    facts.withoutCapacitor();
    facts.controlsAndLamps();
    for (RailSegment rail : module.rails()) {
      facts.circuit.add(
          new RailFact(rail.label(), rail.supply() ? Tie.HIGH : Tie.LOW, rail.linkedTo()));
    }
    facts.jumpers();
    facts.layout.addAll(Buses.of(module, facts.pins, inverters));
    facts.layout.addAll(LookAlikes.shipped().facts(module));
    return facts;
  }

  /** Parts, pins, controls, lamps, rails and inverters: what advice needs. */
  List<WiringFact> circuit() {
    return List.copyOf(circuit);
  }

  /** The circuit, and jumpers, neighbours, buses and look-alikes: what proposal needs. */
  public List<WiringFact> all() {
    List<WiringFact> all = new ArrayList<>(circuit);
    all.addAll(layout);
    return List.copyOf(all);
  }

  private List<WiringFact> part(Fitted fitted) {
    List<WiringFact> facts = new ArrayList<>();
    facts.add(
        new PartFact(
            fitted.label(),
            fitted.part().type(),
            fitted.family().name(),
            fitted.part().pinCount(),
            fitted.part().bus(),
            fitted.part().logic().cellCount(),
            fitted.part().logic().keeps(),
            fitted.family().feedsThroughInputs()));
    if (fitted.contents().known()) {
      facts.add(new Programmed(fitted.label()));
    }
    List<PinFact> own = new ArrayList<>();
    for (PinSpec pin : fitted.part().pins()) {
      End end = End.pin(fitted.label(), pin.number());
      own.add(
          new PinFact(
              end.toString(),
              fitted.label(),
              pin.number(),
              fitted.part().pinCount(),
              pin.name(),
              pin.kind(),
              PinRole.of(fitted.part(), pin),
              netName(end),
              tie(end)));
      end(end);
    }
    facts.addAll(own);
    pins.addAll(own);
    facts.addAll(Inverters.of(fitted, own));
    return facts;
  }

  /** A file that names no capacitor at all may simply not speak of them. */
  private void withoutCapacitor() {
    List<String> without = new ArrayList<>();
    int parts = 0;
    for (Fitted fitted : module.parts().values()) {
      if (fitted.fitted()) {
        parts++;
        if (module.onPaper().nanofarads(fitted.label()) == 0) {
          without.add(fitted.label());
        }
      }
    }
    if (without.size() < parts) {
      without.forEach(part -> circuit.add(new WithoutCapacitor(part)));
    }
  }

  private void controlsAndLamps() {
    for (Control control : module.controls().values()) {
      circuit.add(
          new ControlFact(
              control.label(),
              control.kind(),
              control.restLevel(),
              !control.pullTo().isEmpty(),
              netName(control.terminal())));
      for (Contact contact : module.contacts(control)) {
        contact(control, contact, !contact.pullTo().isEmpty(), netName(contact.terminal()));
      }
      for (Pass pass : control.passes()) {
        String common = netName(pass.common());
        contact(control, pass, false, common.isEmpty() ? "" : netName(pass.thrown()));
        circuit.add(new PassFact(pass.label(), common));
      }
      control.terminals().forEach(this::end);
    }
    for (Lamp lamp : module.lamps().values()) {
      End end = new End(End.Kind.LAMP, lamp.label(), 0);
      circuit.add(new LampFact(lamp.label(), netName(end), lamp.ohms(), lamp.lightsOnHigh()));
      end(end);
    }
    module.passives().ends().forEach(this::end);
    for (SeriesResistor resistor : module.passives().series().values()) {
      for (End end : resistor.ends()) {
        End other = resistor.across(end);
        circuit.add(
            new ResistorBetween(
                resistor.label(), end.toString(), netName(end), other.toString(), netName(other)));
      }
    }
    for (List<String> lines : new TreeMap<>(module.ports()).values()) {
      for (String line : lines) {
        End end = new End(End.Kind.PORT, line, 0);
        end(end);
      }
    }
    for (Word word : module.controlWords()) {
      members(word);
    }
    for (Word word : module.lampWords()) {
      members(word);
      circuit.add(new LampWord(word.label(), word.members()));
    }
  }

  private void contact(Control control, ControlContact contact, boolean pulled, String net) {
    circuit.add(
        new ContactFact(
            contact.label(),
            control.label(),
            control.kind(),
            control.changeOver().isPresent(),
            control.changeOver().filter(ChangeOver::commonOnRail).isPresent(),
            pulled,
            net));
  }

  private void end(End end) {
    layout.add(new EndFact(end.toString(), end.kind(), netName(end), tie(end)));
  }

  private void members(Word word) {
    for (int i = 0; i < word.members().size(); i++) {
      circuit.add(new WordMember(word.label(), i, word.members().get(i)));
    }
  }

  private void jumpers() {
    for (Jumper jumper : module.jumpers()) {
      if (onFittedParts(jumper)) {
        String name = jumper.name();
        Tie tie = tie(jumper.from());
        layout.add(
            new JumperFact(
                name, jumper.net(), jumper.from().toString(), jumper.to().toString(), tie));
        layout.add(jumperEnd(jumper, tie, jumper.from(), jumper.to()));
        layout.add(jumperEnd(jumper, tie, jumper.to(), jumper.from()));
      }
    }
    for (List<End> pair : module.neighbours()) {
      layout.add(new StatedNeighbours(pair.get(0).toString(), pair.get(1).toString()));
    }
  }

  private static JumperEnd jumperEnd(Jumper jumper, Tie tie, End end, End other) {
    return new JumperEnd(
        jumper.name(), jumper.net(), tie, end.kind(), end.toString(), other.toString());
  }

  private boolean onFittedParts(Jumper jumper) {
    return fitted(jumper.from()) && fitted(jumper.to());
  }

  private boolean fitted(End end) {
    return end.kind() != End.Kind.PIN
        || Optional.ofNullable(module.parts().get(end.label())).map(Fitted::fitted).orElse(false);
  }

  private String netName(End end) {
    return netOf.containsKey(end) ? netOf.get(end).name() : "";
  }

  private Tie tie(End end) {
    return Optional.ofNullable(netOf.get(end))
        .flatMap(module::railOf)
        .map(rail -> rail.supply() ? Tie.HIGH : Tie.LOW)
        .orElse(Tie.NONE);
  }
}

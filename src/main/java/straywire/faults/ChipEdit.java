package straywire.faults;

import java.util.List;
import straywire.module.End;
import straywire.module.Module;
import straywire.sim.Variation;

/** What is wrong inside a part, or with which part it is. */
public sealed interface ChipEdit extends Edit {
  /** What goes wrong behind one pin. */
  sealed interface AtPin extends ChipEdit {
    End pin();

    @Override
    default List<End> touches(Module module) {
      return List.of(pin());
    }

    @Override
    default String repair(Module module) {
      return new BoardWords(module).exchange(pin().label());
    }
  }

  /** What goes wrong with what a pin drives. */
  sealed interface AtOutput extends AtPin {
    @Override
    default Claim claim() {
      return Claim.of("inside", pin().label(), "output " + pin().pin());
    }
  }

  /** An output of a part that drives one level whatever its inputs say. */
  record OutputHeld(End pin, boolean high) implements AtOutput {
    @Override
    public void build(Building building) {
      building.variation.holdOutput(pin.label(), pin.pin(), high);
    }

    @Override
    public String words(Module module) {
      return "The output "
          + new BoardWords(module).end(pin)
          + " stays "
          + (high ? "high" : "low")
          + " whatever the inputs say";
    }
  }

  /** An output of a part that never drives. */
  record OutputDead(End pin) implements AtOutput {
    @Override
    public void build(Building building) {
      building.variation.killOutput(pin.label(), pin.pin());
    }

    @Override
    public String words(Module module) {
      return "The output " + new BoardWords(module).end(pin) + " never drives";
    }
  }

  /** An input that the part takes for one level whatever is on its leg. */
  record InputHeld(End pin, boolean high) implements AtPin {
    @Override
    public void build(Building building) {
      building.variation.holdInput(pin.label(), pin.pin(), high);
    }

    @Override
    public Claim claim() {
      return Claim.of("inside", pin.label(), "input " + pin.pin());
    }

    @Override
    public String words(Module module) {
      return "The part takes "
          + new BoardWords(module).end(pin)
          + " for "
          + (high ? "high" : "low")
          + " whatever is on the leg";
    }
  }

  /** What is wrong with a part as a whole. */
  sealed interface OfPart extends ChipEdit {
    String part();

    @Override
    default List<End> touches(Module module) {
      return new BoardWords(module).pins(part());
    }

    @Override
    default Claim claim() {
      return Claim.of("inside", part());
    }
  }

  /** Another part type, or another family, in the socket. */
  record PartReplaced(String part, String type, String family) implements OfPart {
    @Override
    public void build(Building building) {
      building.replace(part, type, family);
    }

    @Override
    public String words(Module module) {
      return "In the place of "
          + new BoardWords(module).part(part)
          + " sits a "
          + type
          + " of family "
          + family;
    }

    @Override
    public String repair(Module module) {
      return "Read the marking; " + BoardWords.decapitalised(new BoardWords(module).exchange(part));
    }

    @Override
    public List<String> seenAt(Module module) {
      return List.of("part " + part);
    }
  }

  /** A memory that was programmed with something else than the module states. */
  record Misprogrammed(String part, Variation.ContentsFault fault) implements OfPart {
    @Override
    public void build(Building building) {
      building.variation.program(part, fault);
    }

    @Override
    public String words(Module module) {
      String name = new BoardWords(module).part(part);
      return switch (fault) {
        case BLANK -> name + " is blank: every bit reads 1";
        case SHIFTED -> "Each word in " + name + " stands one address above its own";
        case REVERSED -> "The bits of each word in " + name + " are in reverse order";
      };
    }

    @Override
    public String repair(Module module) {
      return "Program "
          + new BoardWords(module).part(part)
          + " anew with the words of the module file, and read it back before it goes in again";
    }
  }

  /** A part whose outputs nothing can be said of. */
  sealed interface Unforeseen extends OfPart {
    @Override
    default void build(Building building) {
      building.variation.unlist(part());
    }
  }

  /** A part that misbehaves in a way no other edit describes. */
  record PartUnlisted(String part) implements Unforeseen {
    @Override
    public String words(Module module) {
      return new BoardWords(module).part(part) + " misbehaves in a way not listed";
    }

    @Override
    public String repair(Module module) {
      return new BoardWords(module).exchange(part);
    }
  }

  /** A part without a capacitor across its supply, upset by the spikes of its own outputs. */
  record PartUpset(String part) implements Unforeseen {
    @Override
    public String words(Module module) {
      return new BoardWords(module).part(part)
          + " is upset by its own supply, which no capacitor keeps quiet";
    }

    @Override
    public String repair(Module module) {
      return "Fit 100 nF across the supply and ground legs of "
          + new BoardWords(module).part(part)
          + ", right at the legs";
    }
  }
}

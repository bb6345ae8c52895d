package straywire.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import straywire.module.ModuleFile;
import straywire.parts.ShippedParts;

/** Modules with nothing wrong, beyond their exercises: against a line of arithmetic each. */
class ModuleFunctionsTest {
  private static ModuleBench bench(String name) {
    ModuleBench bench =
        new ModuleBench(
            ModuleFile.readShipped(Path.of("cases", name, "module.yaml"), new ShippedParts()), 1);
    bench.power();
    return bench;
  }

  @Test
  void theBeatCounterCountsTwoBars() {
    ModuleBench bench = bench("beat-counter");
    bench.press("clear");
    for (int beat = 0; beat < 32; beat++) {
      assertThat(bench.number("number")).isEqualTo(beat % 16);
      assertThat(bench.number("carry")).isEqualTo(beat % 16 == 15 ? 1 : 0);
      bench.press("beat");
    }
  }

  @Test
  void theRippleDividerCountsTwoBars() {
    ModuleBench bench = bench("ripple-divider");
    bench.set("reset", 3);
    bench.set("reset", 0);
    for (int beat = 0; beat < 32; beat++) {
      assertThat(bench.number("count")).isEqualTo(beat % 16);
      bench.press("tick");
    }
  }

  @Test
  void theVolumeCounterGoesUpAndDown() {
    ModuleBench bench = bench("volume-counter");
    bench.set("clear", 1);
    bench.set("clear", 0);
    Random random = new Random(7);
    int volume = 0;
    for (int step = 0; step < 60; step++) {
      boolean up = random.nextInt(3) > 0;
      bench.press(up ? "up" : "down");
      volume = (volume + (up ? 1 : 15)) % 16;
      assertThat(bench.number("level")).isEqualTo(volume);
    }
  }

  @Test
  void theDecoderSelectsOneLineOnlyWhileAllThreeEnablesAreGiven() {
    ModuleBench bench = bench("beat-decoder");
    for (int enables = 0; enables < 8; enables++) {
      for (int number = 0; number < 8; number++) {
        bench.set("enables", enables);
        bench.set("number", number);
        assertThat(bench.number("line")).isEqualTo(enables == 0b100 ? 1 << number : 0);
      }
    }
  }

  @Test
  void theSelectorPassesOneOfTwoWordsOrNone() {
    ModuleBench bench = bench("tune-selector");
    for (int inputs = 0; inputs < 1024; inputs++) {
      int hour = inputs & 15;
      int quarter = inputs >> 4 & 15;
      boolean select = (inputs & 256) != 0;
      boolean mute = (inputs & 512) != 0;
      bench.set("hour", hour);
      bench.set("quarter", quarter);
      bench.set("select", select ? 1 : 0);
      bench.set("mute", mute ? 1 : 0);
      assertThat(bench.number("bell")).isEqualTo(mute ? 0 : select ? quarter : hour);
    }
  }

  @Test
  void theAdderAddsAndSubtractsSignedWords() {
    ModuleBench bench = bench("tally-adder");
    Random random = new Random(11);
    for (int round = 0; round < 300; round++) {
      byte a = (byte) random.nextInt(256);
      byte b = (byte) random.nextInt(256);
      boolean minus = random.nextBoolean();
      bench.set("tally", a & 255);
      bench.set("strokes", b & 255);
      bench.set("minus", minus ? 1 : 0);
      int result = minus ? a - b : a + b;
      int carry = (minus ? (a & 255) >= (b & 255) : (a & 255) + (b & 255) > 255) ? 1 : 0;
      int overflow = result == (byte) result ? 0 : 1;
      String what = a + (minus ? " - " : " + ") + b;
      assertThat(bench.number("sum")).as(what).isEqualTo(result & 255);
      assertThat(bench.number("flags")).as(what).isEqualTo(carry * 2 + overflow);
    }
  }

  @Test
  void theComparatorOrdersAllTimes() {
    ModuleBench bench = bench("hour-comparator");
    for (int time = 0; time < 64; time++) {
      for (int set = time % 3; set < 64; set += 3) {
        bench.set("hour", time / 4);
        bench.set("quarter", time % 4);
        bench.set("set-hour", set / 4);
        bench.set("set-quarter", set % 4);
        assertThat(bench.number("time")).isEqualTo(time > set ? 4 : time == set ? 2 : 1);
      }
    }
  }

  @Test
  void theKeyboardGivesTheHighestKey() {
    ModuleBench bench = bench("bell-keyboard");
    for (int pressed = 0; pressed < 256; pressed++) {
      bench.set("keys", ~pressed & 255);
      int highest = pressed == 0 ? 0 : 31 - Integer.numberOfLeadingZeros(pressed);
      assertThat(bench.number("number")).isEqualTo(highest);
      assertThat(bench.number("state")).isEqualTo(pressed == 0 ? 1 : 2);
    }
  }

  @Test
  void theParityGuardTellsOddFromEven() {
    ModuleBench bench = bench("parity-guard");
    for (int word = 0; word < 512; word++) {
      bench.set("data", word >> 1);
      bench.set("P", word & 1);
      assertThat(bench.number("parity")).isEqualTo(Integer.bitCount(word) % 2 == 0 ? 2 : 1);
    }
  }

  @Test
  void theStrikerGateStrikesOnlyWhenEverythingLetsGo() {
    ModuleBench bench = bench("striker-gate");
    for (int inputs = 0; inputs < 128; inputs++) {
      bench.set("inhibits", inputs & 7);
      bench.set("wants", inputs >> 3 & 3);
      bench.set("hush", inputs >> 5 & 1);
      bench.set("stay", inputs >> 6 & 1);
      boolean free = (inputs & 0b0100111) == 0b0100000;
      boolean strike = free && (inputs & 0b1011000) == 0b1011000;
      assertThat(bench.number("shown")).isEqualTo((free ? 4 : 2) + (strike ? 1 : 0));
    }
  }

  @Test
  void theMemoriesReadBackWhatWasWritten() {
    for (String name : new String[] {"verse-memory", "tune-store"}) {
      ModuleBench bench = bench(name);
      boolean store = name.equals("tune-store");
      Random random = new Random(5);
      int[] written = new int[16];
      if (store) {
        bench.set("teach", 0);
      }
      for (int address = 0; address < 16; address++) {
        written[address] = random.nextInt(256);
        bench.set("address", address);
        bench.set("data", written[address]);
        bench.press("write");
      }
      if (store) {
        bench.set("teach", 1);
      }
      for (int address = 15; address >= 0; address--) {
        bench.set("address", address);
        assertThat(bench.number("bus")).as(name).isEqualTo(written[address]);
      }
    }
  }

  @Test
  void thePaceSelectorCountsEachBeatOrEveryOther() {
    ModuleBench bench = bench("pace-selector");
    Random random = new Random(6);
    bench.set("pace", 1);
    bench.press("clear");
    boolean full = true;
    int half = 0;
    int count = 0;
    for (int i = 0; i < 200; i++) {
      if (random.nextInt(4) == 0) {
        // On the way the counter sees a high: an edge when it comes from a low line.
        count += full || half == 0 ? 1 : 0;
        full = !full;
        bench.set("pace", full ? 1 : 0);
      } else {
        bench.press("tick");
        half ^= 1;
        count += full || half == 1 ? 1 : 0;
      }
      assertThat(bench.number("number")).as("move %d", i).isEqualTo(count % 16);
    }
  }

  @Test
  void theRegisterFileKeepsFourWordsApart() {
    ModuleBench bench = bench("register-file");
    Random random = new Random(3);
    int[] kept = new int[4];
    for (int step = 0; step < 60; step++) {
      int into = step < 4 ? step : random.nextInt(4);
      int from = step < 4 ? step : random.nextInt(4);
      kept[into] = random.nextInt(16);
      bench.set("into", into);
      bench.set("from", from);
      bench.set("data", kept[into]);
      bench.press("write");
      assertThat(bench.number("out")).isEqualTo(kept[from]);
    }
  }

  @Test
  void theShiftChainDelaysByItsLength() {
    ModuleBench bench = bench("shift-out");
    bench.press("clear");
    Random random = new Random(9);
    int sent = 0;
    for (int step = 0; step < 40; step++) {
      int bit = random.nextInt(2);
      bench.set("bit", bit);
      bench.press("shift");
      bench.press("store");
      // Bit n of the lamps, counted from the left, went in n shifts ago.
      sent = bit << 15 | sent >> 1;
      assertThat(bench.number("stored")).isEqualTo(sent >> 8);
      assertThat(bench.number("moving")).isEqualTo(sent & 255);
    }
  }
}

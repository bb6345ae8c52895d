package straywire.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import straywire.logic.PinKind;
import straywire.logic.PinSpec;

/** Parts against what they compute, written as arithmetic and without the part notation. */
class ComputedDefinitionsTest {
  private static final ShippedParts PARTS = new ShippedParts();
  private final Random random = new Random(74);

  private static Bench bench(String type) {
    return new Bench(PARTS.part(type).orElseThrow());
  }

  private static String[] row(String pattern, int from, int to) {
    int step = from <= to ? 1 : -1;
    String[] names = new String[Math.abs(to - from) + 1];
    for (int i = 0; i < names.length; i++) {
      names[i] = pattern.replace("#", String.valueOf(from + step * i));
    }
    return names;
  }

  private static String[] letters(String pattern, char from, char to) {
    int step = from <= to ? 1 : -1;
    String[] names = new String[Math.abs(to - from) + 1];
    for (int i = 0; i < names.length; i++) {
      names[i] = pattern.replace("#", String.valueOf((char) (from + step * i)));
    }
    return names;
  }

  private static String binary(long value, int bits) {
    StringBuilder text = new StringBuilder();
    for (int i = bits - 1; i >= 0; i--) {
      text.append((value >> i) & 1);
    }
    return text.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"74x83", "74x283"})
  void anAdderAdds(String type) {
    Bench bench = bench(type);
    for (int a = 0; a < 16; a++) {
      for (int b = 0; b < 16; b++) {
        for (int carry = 0; carry < 2; carry++) {
          bench.word(a, row("A#", 4, 1));
          bench.word(b, row("B#", 4, 1));
          bench.word(carry, "C0");
          bench.settle();
          assertThat(bench.shows("C4", "S4", "S3", "S2", "S1")).isEqualTo(binary(a + b + carry, 5));
        }
      }
    }
  }

  @Test
  void theComparatorCompares() {
    Bench bench = bench("74x85");
    bench.word(0b010, "IA>B", "IA=B", "IA<B");
    for (int a = 0; a < 16; a++) {
      for (int b = 0; b < 16; b++) {
        bench.word(a, row("A#", 3, 0));
        bench.word(b, row("B#", 3, 0));
        bench.settle();
        assertThat(bench.shows("OA>B", "OA=B", "OA<B"))
            .isEqualTo(a > b ? "100" : a == b ? "010" : "001");
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"74x521", "74x688"})
  void anIdentityComparatorIsLowForEqualWords(String type) {
    Bench bench = bench(type);
    for (int i = 0; i < 2000; i++) {
      int p = random.nextInt(256);
      int q = random.nextBoolean() ? p : p ^ (1 << random.nextInt(8));
      boolean enabled = random.nextBoolean();
      bench.word(p, row("P#", 7, 0));
      bench.word(q, row("Q#", 7, 0));
      bench.set("/G", !enabled);
      bench.settle();
      assertThat(bench.shows("/P=Q")).isEqualTo(enabled && p == q ? '0' : '1');
    }
  }

  /** Functions for active-high data, numbered by S3 to S0; sums before the carry is added. */
  private static int[] alu(int select, int a, int b) {
    int nb = ~b & 15;
    return switch (select) {
      case 0 -> new int[] {~a, a};
      case 1 -> new int[] {~(a | b), a | b};
      case 2 -> new int[] {~a & b, a | nb};
      case 3 -> new int[] {0, 15};
      case 4 -> new int[] {~(a & b), a + (a & nb)};
      case 5 -> new int[] {~b, (a | b) + (a & nb)};
      case 6 -> new int[] {a ^ b, a + nb};
      case 7 -> new int[] {a & nb, (a & nb) + 15};
      case 8 -> new int[] {~a | b, a + (a & b)};
      case 9 -> new int[] {~(a ^ b), a + b};
      case 10 -> new int[] {b, (a | nb) + (a & b)};
      case 11 -> new int[] {a & b, (a & b) + 15};
      case 12 -> new int[] {15, a + a};
      case 13 -> new int[] {a | nb, (a | b) + a};
      case 14 -> new int[] {a | b, (a | nb) + a};
      default -> new int[] {a, a + 15};
    };
  }

  @Test
  void theArithmeticUnitDoesItsThirtyTwoFunctions() {
    Bench bench = bench("74x181");
    for (int i = 0; i < 1 << 14; i++) {
      int a = i & 15;
      int b = (i >> 4) & 15;
      int select = (i >> 8) & 15;
      boolean logic = (i >> 12 & 1) == 1;
      int carry = i >> 13;
      bench.word(a, row("/A#", 3, 0));
      bench.word(b, row("/B#", 3, 0));
      bench.word(select, row("S#", 3, 0));
      bench.set("M", logic);
      bench.word(1 - carry, "Cn");
      bench.settle();
      int[] functions = alu(select, a, b);
      int result = logic ? functions[0] & 15 : (functions[1] + carry) & 15;
      String what = "S " + select + " M " + logic + " A " + a + " B " + b + " carry " + carry;
      assertThat(bench.shows(row("/F#", 3, 0))).as(what).isEqualTo(binary(result, 4));
      assertThat(bench.shows("A=B")).as(what).isEqualTo(result == 15 ? 'Z' : '0');
      boolean carryOut = functions[1] + carry > 15;
      assertThat(bench.shows("Cn+4")).as(what).isEqualTo(carryOut ? '0' : '1');
    }
  }

  @Test
  void lookAheadGivesTheCarriesThatAdditionGives() {
    Bench bench = bench("74x182");
    for (int i = 0; i < 512; i++) {
      int generate = i & 15;
      int propagate = (i >> 4) & 15;
      boolean carry = i >> 8 == 1;
      bench.word(~generate, row("/G#", 3, 0));
      bench.word(~propagate, row("/P#", 3, 0));
      bench.set("Cn", carry);
      bench.settle();
      boolean[] carries = new boolean[5];
      carries[0] = carry;
      boolean group = false;
      for (int s = 0; s < 4; s++) {
        boolean g = (generate >> s & 1) == 1;
        boolean p = (propagate >> s & 1) == 1;
        carries[s + 1] = g || (p && carries[s]);
        group = g || (p && group);
      }
      assertThat(bench.shows("Cn+x", "Cn+y", "Cn+z", "/G", "/P"))
          .isEqualTo(
              bit(carries[1])
                  + bit(carries[2])
                  + bit(carries[3])
                  + bit(!group)
                  + bit(propagate != 15));
    }
  }

  private static String bit(boolean level) {
    return level ? "1" : "0";
  }

  @Test
  void parityIsTheCountOfOnes() {
    Bench bench = bench("74x280");
    for (int i = 0; i < 512; i++) {
      bench.word(i, letters("#", 'A', 'I'));
      bench.settle();
      assertThat(bench.shows("EVEN", "ODD")).isEqualTo(Integer.bitCount(i) % 2 == 0 ? "10" : "01");
    }
  }

  @ParameterizedTest
  @CsvSource({"74x42,4,10", "74x138,3,8", "74x154,4,16"})
  void aDecoderPullsOneOutputLow(String type, int bits, int outputs) {
    Bench bench = bench(type);
    for (PinSpec pin : bench.part.pins()) {
      if (pin.kind() == PinKind.INPUT && pin.name().contains("G")) {
        bench.set(pin.name(), !pin.activeLow());
      }
    }
    for (int code = 0; code < 1 << bits; code++) {
      bench.word(code, letters("#", (char) ('A' + bits - 1), 'A'));
      bench.settle();
      long expected = ~(1L << code);
      assertThat(bench.shows(row("/Y#", outputs - 1, 0))).isEqualTo(binary(expected, outputs));
    }
  }

  @ParameterizedTest
  @CsvSource({"74x147,9,1", "74x148,7,0"})
  void aPriorityEncoderGivesTheHighestLowInput(String type, int highest, int lowest) {
    Bench bench = bench(type);
    if (type.equals("74x148")) {
      bench.low("/EI");
    }
    int bits = type.equals("74x148") ? 3 : 4;
    String[] outputs = bits == 3 ? row("/A#", 2, 0) : new String[] {"/D", "/C", "/B", "/A"};
    for (int pattern = 0; pattern < 1 << (highest - lowest + 1); pattern++) {
      bench.word(~pattern, row("/I#", highest, lowest));
      bench.settle();
      int top = pattern == 0 ? 0 : lowest + 31 - Integer.numberOfLeadingZeros(pattern);
      assertThat(bench.shows(outputs)).isEqualTo(binary(~top, bits));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "74x160,10,false",
    "74x161,16,false",
    "74x162,10,true",
    "74x163,16,true",
  })
  void aSynchronousCounterCountsLoadsAndClears(String type, int modulus, boolean clearsOnEdge) {
    Bench bench = bench(type);
    String[] outputs = letters("Q#", 'D', 'A');
    bench.high("/LOAD");
    bench.high("ENP");
    bench.high("ENT");
    bench.low("/CLR");
    bench.pulse("CLK");
    int count = 0;
    for (int i = 0; i < 3000; i++) {
      boolean clear = random.nextInt(20) == 0;
      boolean load = random.nextInt(10) == 0;
      boolean enableP = random.nextInt(5) > 0;
      boolean enableT = random.nextInt(5) > 0;
      int data = random.nextInt(modulus);
      bench.low("CLK");
      bench.settle();
      bench.set("/CLR", !clear);
      bench.set("/LOAD", !load);
      bench.set("ENP", enableP);
      bench.set("ENT", enableT);
      bench.word(data, letters("#", 'D', 'A'));
      bench.settle();
      if (clear && !clearsOnEdge) {
        assertThat(bench.shows(outputs)).isEqualTo("0000");
      } else {
        assertThat(bench.shows(outputs)).isEqualTo(binary(count, 4));
      }
      bench.high("CLK");
      bench.settle();
      count = clear ? 0 : load ? data : enableP && enableT ? (count + 1) % modulus : count;
      assertThat(bench.shows(outputs)).isEqualTo(binary(count, 4));
      assertThat(bench.shows("RCO")).isEqualTo(enableT && count == modulus - 1 ? '1' : '0');
    }
  }

  @ParameterizedTest
  @CsvSource({"74x190,10", "74x191,16"})
  void anUpDownCounterCountsBothWays(String type, int modulus) {
    Bench bench = bench(type);
    bench.low("CLK");
    bench.low("/CTEN");
    bench.low("/LOAD");
    bench.word(0, letters("#", 'D', 'A'));
    bench.settle();
    bench.high("/LOAD");
    int count = 0;
    for (int i = 0; i < 500; i++) {
      boolean down = random.nextBoolean();
      boolean enabled = random.nextInt(4) > 0;
      bench.set("D//U", down);
      bench.set("/CTEN", !enabled);
      bench.low("CLK");
      bench.settle();
      boolean end = count == (down ? 0 : modulus - 1);
      assertThat(bench.shows("MAX/MIN", "/RCO")).isEqualTo(bit(end) + bit(!(end && enabled)));
      bench.high("CLK");
      bench.settle();
      count = enabled ? (count + (down ? modulus - 1 : 1)) % modulus : count;
      assertThat(bench.shows(letters("Q#", 'D', 'A'))).isEqualTo(binary(count, 4));
    }
  }

  @ParameterizedTest
  @CsvSource({"74x192,10", "74x193,16"})
  void aTwoClockCounterCountsBothWays(String type, int modulus) {
    Bench bench = bench(type);
    bench.high("UP");
    bench.high("DOWN");
    bench.high("/LOAD");
    bench.high("CLR");
    bench.settle();
    bench.low("CLR");
    bench.settle();
    int count = 0;
    for (int i = 0; i < 500; i++) {
      boolean down = random.nextBoolean();
      bench.low(down ? "DOWN" : "UP");
      bench.settle();
      assertThat(bench.shows("/CO", "/BO"))
          .isEqualTo(bit(down || count != modulus - 1) + bit(!down || count != 0));
      bench.high(down ? "DOWN" : "UP");
      bench.settle();
      count = (count + (down ? modulus - 1 : 1)) % modulus;
      assertThat(bench.shows(letters("Q#", 'D', 'A'))).isEqualTo(binary(count, 4));
    }
  }

  @ParameterizedTest
  @CsvSource({"74x189,true", "74x219,false"})
  void aSmallMemoryKeepsWhatWasWritten(String type, boolean complement) {
    Bench bench = bench(type);
    int[] words = new int[16];
    String[] outputs = row(complement ? "/Q#" : "Q#", 4, 1);
    for (int i = 0; i < 16 + 2000; i++) {
      int address = i < 16 ? i : random.nextInt(16);
      boolean write = i < 16 || random.nextInt(4) == 0;
      boolean selected = i < 16 || random.nextInt(5) > 0;
      int data = random.nextInt(16);
      bench.high("/WE");
      bench.word(address, row("A#", 3, 0));
      bench.word(data, row("D#", 4, 1));
      bench.set("/CS", !selected);
      bench.settle();
      bench.set("/WE", !write);
      bench.settle();
      if (write && selected) {
        words[address] = data;
      }
      int shown = complement ? ~words[address] : words[address];
      assertThat(bench.shows(outputs)).isEqualTo(selected && !write ? binary(shown, 4) : "ZZZZ");
    }
  }

  /** Words on the pins they are read from: a write is what the pins say, a read drives them. */
  @ParameterizedTest
  @CsvSource({"2114, 10, IO#, 4, 1", "6116, 11, IO#, 7, 0"})
  void aMemoryWithCommonPinsKeepsWhatWasWritten(
      String type, int addressBits, String pin, int high, int low) {
    Bench bench = bench(type);
    bench.part.pinNamed("/OE").ifPresent(p -> bench.low("/OE"));
    String[] pins = row(pin, high, low);
    int[] words = new int[1 << addressBits];
    Arrays.fill(words, -1);
    for (int i = 0; i < 4000; i++) {
      // A few addresses all over, so that words are met again.
      int address = random.nextInt(64) * 37 % words.length;
      boolean write = words[address] < 0 || random.nextInt(4) == 0;
      boolean selected = random.nextInt(5) > 0;
      int data = random.nextInt(1 << pins.length);
      bench.high("/WE");
      bench.word(address, row("A#", addressBits - 1, 0));
      bench.word(data, pins);
      bench.set("/CS", !selected);
      bench.settle();
      bench.set("/WE", !write);
      bench.settle();
      if (write && selected) {
        words[address] = data;
      }
      String drives = selected && !write ? binary(words[address], pins.length) : "";
      assertThat(bench.shows(pins)).isEqualTo(drives.isEmpty() ? "Z".repeat(pins.length) : drives);
    }
  }

  @Test
  void theShiftChainBringsBitsOutInOrder() {
    Bench bench = bench("74x595");
    bench.low("/OE");
    bench.high("/SRCLR");
    bench.low("RCLK");
    int sent = 0;
    for (int i = 0; i < 400; i++) {
      boolean bit = random.nextBoolean();
      bench.set("SER", bit);
      bench.pulse("SRCLK");
      sent = (sent << 1 | (bit ? 1 : 0)) & 255;
      if (i >= 8 && random.nextInt(3) == 0) {
        bench.pulse("RCLK");
        assertThat(bench.shows(letters("Q#", 'H', 'A'))).isEqualTo(binary(sent, 8));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"4040,12,/CLK,RESET", "74x393,4,/1CLK,1CLR"})
  void aRippleCounterCountsFallingEdges(String type, int bits, String clock, String clear) {
    Bench bench = bench(type);
    String[] outputs = type.equals("4040") ? row("Q#", 12, 1) : letters("1Q#", 'D', 'A');
    bench.high(clear);
    bench.settle();
    bench.low(clear);
    for (int count = 1; count < 5000; count++) {
      bench.fallingPulse(clock);
      if (count % 7 == 0 || count > 4090) {
        assertThat(bench.shows(outputs)).isEqualTo(binary(count, bits));
      }
    }
  }
}

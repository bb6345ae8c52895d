package straywire.module;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import straywire.format.InputError;

class ModuleErrorsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      maxCharsPerColumn = 400,
      textBlock =
          """
          # place in the small module | changed to | line complained of | complaint
          straywire-module/1 | straywire-module/2 | 1 | format: this program reads straywire-module/1, got straywire-module/2
          about: | abuot: | 4 | unknown field abuot; nearest is about
          title: Striker gate | titel: Striker gate | 3 | unknown field titel; nearest is title
          title: Striker gate | about: Striker gate | 4 | about: stands twice, first on line 3
          title: Striker gate | title: | 3 | title: expected words, got nothing; put words in quotes
          title: Striker gate | title: 7 | 3 | title: expected words, got 7; put words in quotes
          name: striker | name: the striker | 2 | name: "the striker" is no label; a label starts with a letter and goes on with letters, digits and any of - _ +
          family: LS, note | famly: LS, note | 10 | parts.U1: unknown field famly; nearest is family
          {type: 74x04, family: LS, note: upper half} | {type: 74x04} | 10 | parts.U1: the field family is missing
          {type: 74x04, family: LS, note: upper half} | 74x04 | 10 | parts.U1: expected fields, each with a colon and a space, such as "name: value", got 74x04
          type: 74x189 | type: 74x188 | 11 | parts.U2.type: unknown part type 74x188; nearest is 74x189
          family: HC | family: HCX | 11 | parts.U2.family: unknown family HCX; nearest is HC
          family: HC | family: quick | 11 | parts.U2.family: unknown family quick; known are HC, LS
          fitted: false | fitted: no | 11 | parts.U2.fitted: expected true or false, got no
          U2: {type | U1: {type | 11 | parts.U1: stands twice, first on line 10
          U2: {type | A: {type | 13 | controls.A: the label A is taken by a part on line 11
          U2: {type | true: {type | 11 | parts.true: "true" is no label; a label starts with a letter and goes on with letters, digits and any of - _ +
          ab: {controls | A: {controls | 22 | words.A: the label A is taken by a control on line 13
          {level: ground, linked-to: GND} | {level: gruond} | 8 | rails.GND.right.level: gruond is not one of supply, ground
          {level: ground, linked-to: GND} | {level: ground, linked-to: GDN} | 8 | rails.GND.right.linked-to: no rail is labelled GDN; nearest is GND
          {level: ground, linked-to: GND} | {level: ground, linked-to: VCC} | 8 | rails.GND.right.linked-to: GND.right is ground, VCC is supply; link rails of one level
          {level: ground, linked-to: GND} | {level: ground, linked-to: GND.right} | 8 | rails.GND.right.linked-to: the links run in a circle; leave out one where power enters
          kind: button | kind: knob | 15 | controls.go.kind: knob is not one of switch, button, dip
          closes-to: VCC | closes-to: VC | 14 | controls.B.closes-to: no rail is labelled VC; nearest is VCC
          pull-to: VCC, pull-ohms: 4700 | pull-to: VCC | 15 | controls.go: pull-to and pull-ohms belong together; write both or neither
          pull-to: VCC, pull-ohms: 4700 | pull-to: GND, pull-ohms: 4700 | 15 | controls.go.pull-to: the contact closes to ground, so the resistor goes to supply; GND is ground
          pull-ohms: 4700 | pull-ohms: 4n7 | 15 | controls.go.pull-ohms: expected ohms such as 470, 4k7 or 1M, from 1 to 10M, got 4n7
          pull-ohms: 4700 | pull-ohms: 0 | 15 | controls.go.pull-ohms: expected ohms such as 470, 4k7 or 1M, from 1 to 10M, got 0
          pull-ohms: 4700 | pull-ohms: 4700, other-throw: A | 15 | controls.go.other-throw: the label A is taken by a control on line 13
          pull-ohms: 4700 | pull-ohms: 4700, other-rail: GND | 15 | controls.go.other-rail: both throws would be at ground; other-rail names a rail of the other level
          pull-ohms: 4700 | pull-ohms: 4700, other-rail: VCC, other-throw: go2 | 15 | controls.go: the common of a change-over is at a rail (other-throw) or at the line (other-rail), not both
          closes-to: GND, pull-to: VCC, pull-ohms: 4700 | low-throw: go1, high-throw: go1 | 15 | controls.go.high-throw: the label go1 is taken by a throw on line 15
          closes-to: GND, pull-to: VCC, pull-ohms: 4700 | low-throw: go1, high-thrown: go2 | 15 | controls.go: unknown field high-thrown; nearest is high-throw
          closes-to: GND, pull-to: VCC, pull-ohms: 4700 | low-throw: go1 | 15 | controls.go: the field high-throw is missing
          pull-ohms: 4700 | pull-ohms: 4700, low-throw: go1, high-throw: go2 | 15 | controls.go: the common of a change-over is a line (low-throw and high-throw) or at a rail (closes-to), not both; a resistor at a throw is written under resistors
          rest: low | rest: down | 13 | controls.A.rest: down is not one of low, high
          {to: VCC, ohms: 0} | {to: VCC} | 18 | lamps.L0: the field ohms is missing
          {to: VCC, ohms: 0} | {to: U1, ohms: 0} | 18 | lamps.L0.to: no rail is labelled U1; known are GND, GND.right, VCC
          bells: [BELL1, BELL0] | bells: [BELL1, BELL1] | 20 | ports.bells: the label BELL1 is taken by a port line on line 20
          bells: [BELL1, BELL0] | bells: [] | 20 | ports.bells: a port has at least one line
          {controls: [A, B]} | {controls: [A, C]} | 22 | words.ab.controls: no control is labelled C; known are A, B, go
          {controls: [A, B]} | {controls: [A, A]} | 22 | words.ab.controls: A stands twice in the word
          {controls: [A, B]} | {controls: [A, go]} | 22 | words.ab.controls: go is a button; a word of controls is made of switches
          {lamps: [L1, L0]} | {lamps: [L1, L9]} | 23 | words.out.lamps: no lamp is labelled L9; nearest is L0
          {lamps: [L1, L0]} | {lamps: [L1], controls: [A]} | 23 | words.out: a word has either controls or lamps
          {lamps: [L1, L0]} | {lamps: []} | 23 | words.out.lamps: a word has at least one member
          [VCC, U1.VCC, U2.16] | [VCC, U1.VCC, U2.17] | 25 | nets.VCC: U2 (74x189) has no pin 17; its pins are 1 to 16
          [VCC, U1.VCC, U2.16] | [VCC, U1.VCC, U2./WR] | 25 | nets.VCC: U2 (74x189) has no pin /WR; nearest is /WE (pin 3)
          [VCC, U1.VCC, U2.16] | [VCC, U1.VCC, U3.16] | 25 | nets.VCC: no part is labelled U3; nearest is U1
          [VCC, U1.VCC, U2.16] | [VCC, U1.VCC, U2] | 25 | nets.VCC: U2 is a part; name one of its pins, such as U2.1 or U2.A0
          [VCC, U1.VCC, U2.16] | [U1.VCC, VCC, U2.16] | 25 | nets.VCC: a net on a rail starts with it; write VCC first
          [VCC, U1.VCC, U2.16] | [VCC, U1.VCC, GND] | 25 | nets.VCC: a net has one rail, got VCC and GND; rails of one level are joined by linked-to
          [VCC, U1.VCC, U2.16] | VCC | 25 | nets.VCC: expected fields, each with a colon and a space, such as "name: value", got VCC
          [U2./CS, GND.right, U2./WE] | [U2./CS, GND.rigth, U2./WE] | 27 | nets.RIGHT.ends: nothing is labelled GND.rigth; nearest is GND.right
          order: unknown, ends: [U1.4 | order: none, ends: [U1.4 | 32 | nets.L0.order: none is not one of known, unknown
          B: [B, U1.3] | B: [B] | 29 | nets.B: the net has one end, B; a net joins at least two ends
          B: [B, U1.3] | B: [] | 29 | nets.B: the net is empty; a net joins at least two ends
          B: [B, U1.3] | B: [B, U1.1] | 29 | nets.B: U1.1 is in net A on line 28 already; an end is in one net, once
          B: [B, U1.3] | B: [B, U1.3, B] | 29 | nets.B: B is in net B on line 29 already; an end is in one net, once
          B: [B, U1.3] | A: [B, U1.3] | 29 | nets.A: stands twice, first on line 28
          B: [B, U1.3] | B: [b, U1.3] | 29 | nets.B: nothing is labelled b; nearest is B
          B: [B, U1.3] | B: [ab, U1.3] | 29 | nets.B: ab is several places; name one of them
          - [U1.14, U2.1] | - [U1.14] | 34 | neighbours: neighbours are two different ends, such as [U1.3, U2.14]
          - [U1.14, U2.1] | - [U1.14, U1.14] | 34 | neighbours: neighbours are two different ends, such as [U1.3, U2.14]
          {power: on} | {power: yes} | 36 | exercise: power: yes is not one of on, off
          {power: on} | {note: wait} | 36 | exercise: note is no step; a step is one of power, set, press, hold, release, look
          {power: on} | {power: on, press: go} | 36 | exercise: one entry at a time, got power and press
          {set: {ab: 01}} | {set: {ab: 011}} | 37 | exercise: ab has 2 places, high bit first (A B), got 3 in "011"
          {set: {ab: 01}} | {set: {ab: 0x}} | 37 | exercise: ab: "0x" has a 'x'; write 1 high, 0 low
          {set: {ab: 01}} | {set: {ab: 01, A: low}} | 37 | exercise: A is given twice
          {set: {ab: 01}} | {set: {ba: 01}} | 37 | exercise: no switch or word of them is labelled ba; nearest is ab
          {set: {A: high}} | {set: {A: 1}} | 38 | exercise: A: 1 is not one of high, low
          {set: {A: high}} | {set: {go: high}} | 38 | exercise: go is a button; press it, or hold and release it
          {set: {A: high}} | {set: {}} | 38 | exercise: no switch is named; known are A, B, ab
          {press: go} | {press: A} | 39 | exercise: A is a switch; set it high or low
          {press: go} | {press: og} | 39 | exercise: no button is labelled og; nearest is go
          {look: [out, L1]} | {look: [out, L7]} | 41 | exercise: no lamp or word of lamps is labelled L7; nearest is L0
          {look: [out, L1]} | {look: []} | 41 | exercise: nothing to look at; known are L0, L1, out
          """)
  void oneLineSaysWhatIsWrongAndWhatWouldBeRight(
      String place, String change, int line, String complaint) {
    assertThatThrownBy(() -> BeatMemory.parse(SmallModule.with(place, change)))
        .isInstanceOf(InputError.class)
        .hasMessage("m.yaml:" + line + ": " + complaint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          name: striker | 'name: "striker' | 2 | not YAML: found unexpected end of stream
          bells: [BELL1, BELL0] | bells: [BELL1, BELL0 | 21 | not YAML: expected ',' or ']', but got :
          name: striker | - striker | 2 | not YAML: expected <block end>, but found '-'
          '{to: VCC, ohms: 0}' | '*L1' | 18 | not YAML: found undefined alias L1
          """)
  void whatIsNotYamlIsSaidSo(String place, String change, int line, String complaint) {
    assertThatThrownBy(() -> BeatMemory.parse(SmallModule.with(place, change)))
        .isInstanceOf(InputError.class)
        .hasMessage("m.yaml:" + line + ": " + complaint);
  }

  @Test
  void noPartIsFedThroughAChangeOver() {
    String yaml =
        SmallModule.with(
                "closes-to: GND, pull-to: VCC, pull-ohms: 4700", "low-throw: go1, high-throw: go2")
            .replace("order: known, ends: [go, U1.5]", "order: known, ends: [go, U1.5, U2.8]")
            .replace("GND: [GND, U1.GND, U2.8]", "GND: [GND, U1.GND]");
    assertThatThrownBy(() -> BeatMemory.parse(yaml))
        .isInstanceOf(InputError.class)
        .hasMessageContaining(
            "nets.GO: U2.8 takes its supply through a change-over; wire it straight to a rail");
  }

  @Test
  void aPieceUsedTwiceIsRefused() {
    String yaml =
        SmallModule.with("GND: {level: ground}", "GND: &ground {level: ground}")
            .replace("{level: ground, linked-to: GND}", "*ground");

    assertThatThrownBy(() -> BeatMemory.parse(yaml))
        .isInstanceOf(InputError.class)
        .hasMessageMatching(
            "m.yaml:[1-9]\\d*: a list or mapping is used twice by \\*name; write it out");
  }
}

// What a pin does electrically. Strengths stand for currents, compared only with each other:
//
//   supply0, supply1  a rail, or a closed contact to one
//   strong0           low of an LS bus driver (IOL 24 mA: SN74LS245, from memory)
//   pull0             low of an ordinary LS output (IOL 8 mA: Fairchild DM74LS00, Motorola
//                     SN54/74LS00); high of an LS bus driver (IOH -15 mA: from memory); both levels
//                     of an HC output (-/+4 mA: from memory)
//   weak1             high of an ordinary LS output (IOS 20 to 100 mA into a short but far below
//                     2 V then: the same sheets); a pull-up of 1 kOhm (5 mA)
//   medium0, medium1  what only shows itself where nothing drives
//
// Each output takes one unit of time, everything else none.

// What a rail does to copper joined to it. Whether supply and ground meet somewhere, so that the
// supply collapses, is worked out apart from this: see "alive" in the text of a board.
module rail #(parameter SUPPLY = 0) (inout pin);
  assign (supply1, supply0) pin = SUPPLY ? 1'b1 : 1'b0;
endmodule

// An input. Nothing is drawn from the line; an open LS input leans high (1.4 V: Fairchild
// DM74LS00 input circuit; 1.49 V measured, HP Bench Briefs 1Q1996 says 1.4 to 1.5).
module in_pin #(parameter FAMILY = "LS", parameter LEANS = 1) (input pin, output level);
  wire inside, one;
  nmos (inside, pin, 1'b1);
  assign (weak1, weak0) one = 1'b1;
  generate
    if (FAMILY == "LS" && LEANS) rnmos (inside, one, 1'b1);
  endgenerate
  buf (level, inside);
endmodule

// An output that drives level while on is 1 and has let go while on is 0.
module out_pin #(parameter FAMILY = "LS", parameter BUS = 0) (inout pin, input level, input on);
  generate
    if (FAMILY == "HC") bufif1 (pull0, pull1) #1 (pin, level, on);
    else if (BUS) bufif1 (strong0, pull1) #1 (pin, level, on);
    else bufif1 (pull0, weak1) #1 (pin, level, on);
  endgenerate
endmodule

// An output that a defect holds at one level.
module held_pin #(parameter FAMILY = "LS", parameter BUS = 0, parameter HIGH = 0) (inout pin);
  out_pin #(.FAMILY(FAMILY), .BUS(BUS)) hold (pin, HIGH ? 1'b1 : 1'b0, 1'b1);
endmodule

// How a part is fed. FEED: "FULL"; "NO_GROUND": supply, but the ground leg meets nothing, so that
// current finds its way out through any input that is low; "NONE". (Common practice, no source.)
module feed #(parameter FEED = "FULL", parameter INPUTS = 1)
    (input [INPUTS-1:0] level, output reg works);
  integer i;
  always @(level) begin
    works = 1'b0;
    for (i = 0; i < INPUTS; i = i + 1)
      if (level[i] === 1'b0) works = 1'b1;
      else if (level[i] !== 1'b1 && works !== 1'b1) works = 1'bx;
    if (FEED != "NO_GROUND") works = FEED == "FULL";
  end
  initial if (FEED != "NO_GROUND") works = FEED == "FULL";
endmodule

// A push-pull output. Fed, but with no way out for the current, its upper half conducts.
module push_pull #(parameter FAMILY = "LS", parameter FEED = "FULL")
    (inout pin, input level, input works);
  wire shown = works === 1'b1 ? level : works === 1'b0 || level === 1'b1 ? 1'b1 : 1'bx;
  out_pin #(.FAMILY(FAMILY)) out (pin, shown, FEED == "NONE" ? 1'b0 : 1'b1);
endmodule

// A three-state output.
module three_state #(parameter FAMILY = "LS", parameter BUS = 0)
    (inout pin, input level, input on, input works);
  out_pin #(.FAMILY(FAMILY), .BUS(BUS)) out (pin, level, works & on);
endmodule

// A switch or button to ground against a pull-up of 1 kOhm.
module control #(parameter PULL = 1) (inout pin, input closed);
  bufif1 (supply1, supply0) (pin, 1'b0, closed);
  generate
    if (PULL) pullup (weak1) (pin);
  endgenerate
endmodule

// A lamp to ground: lit where the line is driven high, dark where it is low or nothing drives it,
// and where the supply has collapsed.
module lamp (input pin, input alive, output lit);
  wire inside, none;
  nmos (inside, pin, 1'b1);
  assign (weak1, weak0) none = 1'b0;
  rnmos (inside, none, 1'b1);
  assign lit = inside & alive;
endmodule

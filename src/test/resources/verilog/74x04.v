// Six one-input gates on the pins of the 74x04: inputs 1, 3, 5, 9, 11, 13, outputs 2, 4, 6, 8, 10,
// 12, ground 7, supply 14 (IK IN74LS04 and Fairchild DM7404 data sheets, which also give Y = not A).
//
// KIND: "NOT" for the 74x04 and the 74x14 (a 74x04 with hysteresis), "OPEN_NOT" for the 74x05, whose
// outputs only pull low, "OPEN_SAME" for the 74x07, which does so without inverting (all from
// memory).
module gate1 #(parameter FAMILY = "LS", parameter FEED = "FULL", parameter KIND = "NOT")
    (inout pin, input level, input works);
  generate
    if (KIND == "NOT")
      push_pull #(FAMILY, FEED) out (pin, ~level, works);
    else
      three_state #(FAMILY) out (pin, 1'b0, KIND == "OPEN_NOT" ? level : ~level, works);
  endgenerate
endmodule

module six_gates #(parameter FAMILY = "LS", parameter FEED = "FULL", parameter KIND = "NOT")
    (input p1, inout p2, input p3, inout p4, input p5, inout p6, inout p8, input p9, inout p10,
     input p11, inout p12, input p13);
  localparam LEANS = FEED != "NONE";
  wire works;
  wire [5:0] in;
  in_pin #(FAMILY, LEANS) i1 (p1, in[0]);
  in_pin #(FAMILY, LEANS) i3 (p3, in[1]);
  in_pin #(FAMILY, LEANS) i5 (p5, in[2]);
  in_pin #(FAMILY, LEANS) i9 (p9, in[3]);
  in_pin #(FAMILY, LEANS) i11 (p11, in[4]);
  in_pin #(FAMILY, LEANS) i13 (p13, in[5]);
  feed #(FEED, 6) power (in, works);
  gate1 #(FAMILY, FEED, KIND) o2 (p2, in[0], works);
  gate1 #(FAMILY, FEED, KIND) o4 (p4, in[1], works);
  gate1 #(FAMILY, FEED, KIND) o6 (p6, in[2], works);
  gate1 #(FAMILY, FEED, KIND) o8 (p8, in[3], works);
  gate1 #(FAMILY, FEED, KIND) o10 (p10, in[4], works);
  gate1 #(FAMILY, FEED, KIND) o12 (p12, in[5], works);
endmodule

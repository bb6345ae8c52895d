// Octal bus transceiver: output enable (19) low and direction (1) high drives A (2 to 9) to B (18
// down to 11), direction low drives B to A, output enable high lets go of both sides. (SN74LS245
// function table and pin-out, from memory; pins agree with the symbol of the KiCad library, 74LS245.)
//
// LOW, HIGH: pins whose input stage a defect holds; CUT: pins whose output stage never drives. One
// bit a pin.
module both_ways #(parameter FAMILY = "LS", parameter FEED = "FULL", parameter A_LOW = 0,
                   parameter A_HIGH = 0, parameter B_LOW = 0, parameter B_HIGH = 0,
                   parameter A_CUT = 0, parameter B_CUT = 0)
    (inout a, inout b, input a_to_b, input b_to_a, input works, output a_level, output b_level);
  localparam LEANS = FEED != "NONE";
  wire a_in, b_in;
  in_pin #(FAMILY, LEANS) from_a (a, a_in);
  in_pin #(FAMILY, LEANS) from_b (b, b_in);
  assign a_level = A_LOW ? 1'b0 : A_HIGH ? 1'b1 : a_in;
  assign b_level = B_LOW ? 1'b0 : B_HIGH ? 1'b1 : b_in;
  three_state #(FAMILY, 1) to_b (b, a_level, B_CUT ? 1'b0 : a_to_b, works);
  three_state #(FAMILY, 1) to_a (a, b_level, A_CUT ? 1'b0 : b_to_a, works);
endmodule

module transceiver #(parameter FAMILY = "LS", parameter FEED = "FULL", parameter [20:1] LOW = 0,
                     parameter [20:1] HIGH = 0, parameter [20:1] CUT = 0)
    (input p1, inout p2, inout p3, inout p4, inout p5, inout p6, inout p7, inout p8, inout p9,
     inout p11, inout p12, inout p13, inout p14, inout p15, inout p16, inout p17, inout p18,
     input p19);
  localparam LEANS = FEED != "NONE";
  wire dir, oe, works;
  wire [7:0] a, b;
  in_pin #(FAMILY, LEANS) i1 (p1, dir);
  in_pin #(FAMILY, LEANS) i19 (p19, oe);
  feed #(FEED, 18) power ({dir, oe, a, b}, works);
  wire ab = ~oe & dir;
  wire ba = ~oe & ~dir;
  both_ways #(FAMILY, FEED, LOW[2], HIGH[2], LOW[18], HIGH[18], CUT[2], CUT[18])
    b1 (p2, p18, ab, ba, works, a[0], b[0]);
  both_ways #(FAMILY, FEED, LOW[3], HIGH[3], LOW[17], HIGH[17], CUT[3], CUT[17])
    b2 (p3, p17, ab, ba, works, a[1], b[1]);
  both_ways #(FAMILY, FEED, LOW[4], HIGH[4], LOW[16], HIGH[16], CUT[4], CUT[16])
    b3 (p4, p16, ab, ba, works, a[2], b[2]);
  both_ways #(FAMILY, FEED, LOW[5], HIGH[5], LOW[15], HIGH[15], CUT[5], CUT[15])
    b4 (p5, p15, ab, ba, works, a[3], b[3]);
  both_ways #(FAMILY, FEED, LOW[6], HIGH[6], LOW[14], HIGH[14], CUT[6], CUT[14])
    b5 (p6, p14, ab, ba, works, a[4], b[4]);
  both_ways #(FAMILY, FEED, LOW[7], HIGH[7], LOW[13], HIGH[13], CUT[7], CUT[13])
    b6 (p7, p13, ab, ba, works, a[5], b[5]);
  both_ways #(FAMILY, FEED, LOW[8], HIGH[8], LOW[12], HIGH[12], CUT[8], CUT[12])
    b7 (p8, p12, ab, ba, works, a[6], b[6]);
  both_ways #(FAMILY, FEED, LOW[9], HIGH[9], LOW[11], HIGH[11], CUT[9], CUT[11])
    b8 (p9, p11, ab, ba, works, a[7], b[7]);
endmodule

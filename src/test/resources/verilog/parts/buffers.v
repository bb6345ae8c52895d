// Buffers and transceivers.
module t74x07 (input p1, p3, p5, p9, p11, p13, output p2, p4, p6, p8, p10, p12);
  bufif0 a (p2, 1'b0, p1), b (p4, 1'b0, p3), c (p6, 1'b0, p5), d (p8, 1'b0, p9),
         e (p10, 1'b0, p11), f (p12, 1'b0, p13);
endmodule
module t74x125 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  bufif0 a (p3, p2, p1), b (p6, p5, p4), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t74x126 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  bufif1 a (p3, p2, p1), b (p6, p5, p4), c (p8, p9, p10), d (p11, p12, p13);
endmodule
// Group 1 is enabled by pin 1, group 2 by pin 19; the outputs of group 1 face its inputs.
module t74x240 (input p1, p2, p4, p6, p8, p11, p13, p15, p17, p19,
                output p3, p5, p7, p9, p12, p14, p16, p18);
  notif0 a (p18, p2, p1), b (p16, p4, p1), c (p14, p6, p1), d (p12, p8, p1),
         e (p9, p11, p19), f (p7, p13, p19), g (p5, p15, p19), h (p3, p17, p19);
endmodule
module t74x241 (input p1, p2, p4, p6, p8, p11, p13, p15, p17, p19,
                output p3, p5, p7, p9, p12, p14, p16, p18);
  bufif0 a (p18, p2, p1), b (p16, p4, p1), c (p14, p6, p1), d (p12, p8, p1);
  bufif1 e (p9, p11, p19), f (p7, p13, p19), g (p5, p15, p19), h (p3, p17, p19);
endmodule
module t74x244 (input p1, p2, p4, p6, p8, p11, p13, p15, p17, p19,
                output p3, p5, p7, p9, p12, p14, p16, p18);
  bufif0 a (p18, p2, p1), b (p16, p4, p1), c (p14, p6, p1), d (p12, p8, p1),
         e (p9, p11, p19), f (p7, p13, p19), g (p5, p15, p19), h (p3, p17, p19);
endmodule
// Direction high: from A (2 to 9) to B (18 down to 11).
module t74x245 (input p1, p19, inout p2, p3, p4, p5, p6, p7, p8, p9,
                p11, p12, p13, p14, p15, p16, p17, p18);
  wire to_b = ~p19 & p1;
  wire to_a = ~p19 & ~p1;
  bufif1 a1 (p18, p2, to_b), a2 (p17, p3, to_b), a3 (p16, p4, to_b), a4 (p15, p5, to_b),
         a5 (p14, p6, to_b), a6 (p13, p7, to_b), a7 (p12, p8, to_b), a8 (p11, p9, to_b),
         b1 (p2, p18, to_a), b2 (p3, p17, to_a), b3 (p4, p16, to_a), b4 (p5, p15, to_a),
         b5 (p6, p14, to_a), b6 (p7, p13, to_a), b7 (p8, p12, to_a), b8 (p9, p11, to_a);
endmodule
module t74x365 (input p1, p2, p4, p6, p10, p12, p14, p15, output p3, p5, p7, p9, p11, p13);
  wire off = p1 | p15;
  bufif0 a (p3, p2, off), b (p5, p4, off), c (p7, p6, off), d (p9, p10, off),
         e (p11, p12, off), f (p13, p14, off);
endmodule
module t74x367 (input p1, p2, p4, p6, p10, p12, p14, p15, output p3, p5, p7, p9, p11, p13);
  bufif0 a (p3, p2, p1), b (p5, p4, p1), c (p7, p6, p1), d (p9, p10, p1),
         e (p11, p12, p15), f (p13, p14, p15);
endmodule
module t74x540 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p19,
                output p11, p12, p13, p14, p15, p16, p17, p18);
  wire off = p1 | p19;
  notif0 a (p18, p2, off), b (p17, p3, off), c (p16, p4, off), d (p15, p5, off),
         e (p14, p6, off), f (p13, p7, off), g (p12, p8, off), h (p11, p9, off);
endmodule
module t74x541 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p19,
                output p11, p12, p13, p14, p15, p16, p17, p18);
  wire off = p1 | p19;
  bufif0 a (p18, p2, off), b (p17, p3, off), c (p16, p4, off), d (p15, p5, off),
         e (p14, p6, off), f (p13, p7, off), g (p12, p8, off), h (p11, p9, off);
endmodule

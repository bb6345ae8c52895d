// Counters.

// Synchronous with load; MOD 10 or 16, clear at once or on the edge.
module counter4 #(parameter MOD = 16, parameter AT_ONCE = 1)
    (input clr_n, clk, input [3:0] data, input enp, ent, load_n, output reg [3:0] q, output rco);
  wire t;
  rise edge_of (clk, t);
  always @(t)
    if (!clr_n) q = 0;
    else if (!load_n) q = data;
    else if (enp & ent) q = q === MOD - 1 ? 4'd0 : q + 4'd1;
  always @(clr_n) if (AT_ONCE && !clr_n) q = 0;
  assign rco = ent & q == MOD - 1;
endmodule
module t74x160 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, output p11, p12, p13, p14, p15);
  counter4 #(10, 1) c (p1, p2, {p6, p5, p4, p3}, p7, p10, p9, {p11, p12, p13, p14}, p15);
endmodule
module t74x161 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, output p11, p12, p13, p14, p15);
  counter4 #(16, 1) c (p1, p2, {p6, p5, p4, p3}, p7, p10, p9, {p11, p12, p13, p14}, p15);
endmodule
module t74x162 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, output p11, p12, p13, p14, p15);
  counter4 #(10, 0) c (p1, p2, {p6, p5, p4, p3}, p7, p10, p9, {p11, p12, p13, p14}, p15);
endmodule
module t74x163 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, output p11, p12, p13, p14, p15);
  counter4 #(16, 0) c (p1, p2, {p6, p5, p4, p3}, p7, p10, p9, {p11, p12, p13, p14}, p15);
endmodule

// Up and down by one clock; the load is transparent.
module updown #(parameter MOD = 16)
    (input [3:0] data, input cten_n, down, load_n, clk, output reg [3:0] q,
     output max_min, rco_n);
  wire t;
  rise edge_of (clk, t);
  always @(t)
    if (load_n & ~cten_n)
      if (down) q = q === 0 ? MOD - 1 : q - 4'd1;
      else q = q === MOD - 1 ? 4'd0 : q + 4'd1;
  always @(load_n or data) if (!load_n) q = data;
  assign max_min = down ? q == 0 : q == MOD - 1;
  assign rco_n = ~(max_min & ~cten_n & ~clk);
endmodule
module t74x190 (input p1, p4, p5, p9, p10, p11, p14, p15, output p2, p3, p6, p7, p12, p13);
  updown #(10) c ({p9, p10, p1, p15}, p4, p5, p11, p14, {p7, p6, p2, p3}, p12, p13);
endmodule
module t74x191 (input p1, p4, p5, p9, p10, p11, p14, p15, output p2, p3, p6, p7, p12, p13);
  updown #(16) c ({p9, p10, p1, p15}, p4, p5, p11, p14, {p7, p6, p2, p3}, p12, p13);
endmodule

// Up and down by two clocks.
module twoclock #(parameter MOD = 16)
    (input [3:0] data, input clr, load_n, up, down, output reg [3:0] q, output co_n, bo_n);
  wire tu, td;
  rise up_edge (up, tu);
  rise down_edge (down, td);
  always @(tu) if (~clr & load_n & down) q = q === MOD - 1 ? 4'd0 : q + 4'd1;
  always @(td) if (~clr & load_n & up) q = q === 0 ? MOD - 1 : q - 4'd1;
  always @(clr or load_n or data) if (clr) q = 0; else if (!load_n) q = data;
  assign co_n = ~(~up & q == MOD - 1);
  assign bo_n = ~(~down & q == 0);
endmodule
module t74x192 (input p1, p4, p5, p9, p10, p11, p14, p15, output p2, p3, p6, p7, p12, p13);
  twoclock #(10) c ({p9, p10, p1, p15}, p14, p11, p5, p4, {p7, p6, p2, p3}, p12, p13);
endmodule
module t74x193 (input p1, p4, p5, p9, p10, p11, p14, p15, output p2, p3, p6, p7, p12, p13);
  twoclock #(16) c ({p9, p10, p1, p15}, p14, p11, p5, p4, {p7, p6, p2, p3}, p12, p13);
endmodule

// Divide by 2 and by 5; setting to nine outweighs resetting.
module decade (input cka, ckb, reset, nine, output reg qa, output reg [2:0] q);
  wire ta, tb;
  rise a (~cka, ta);
  rise b (~ckb, tb);
  always @(ta) if (~reset & ~nine) qa = ~qa;
  always @(tb) if (~reset & ~nine)
    case (q)
      3'd0: q = 3'd1;
      3'd1: q = 3'd2;
      3'd2: q = 3'd3;
      3'd3: q = 3'd4;
      3'd4: q = 3'd0;
      default: q = 3'bx;
    endcase
  always @(reset or nine)
    if (nine) {q, qa} = 4'b1001;
    else if (reset) {q, qa} = 4'b0000;
endmodule
module t74x90 (input p1, p2, p3, p6, p7, p14, output p8, p9, p11, p12);
  decade d (p14, p1, p2 & p3, p6 & p7, p12, {p11, p8, p9});
endmodule
module t74x290 (input p1, p3, p10, p11, p12, p13, output p4, p5, p8, p9);
  decade d (p10, p11, p12 & p13, p1 & p3, p9, {p8, p4, p5});
endmodule

// Ripple counters, stage by stage.
module t74x93 (input p1, p2, p3, p14, output p8, p9, p11, p12);
  wire r = p2 & p3;
  stage a (p14, r, p12), b (p1, r, p9), c (p9, r, p8), d (p8, r, p11);
endmodule
module t74x293 (input p10, p11, p12, p13, output p4, p5, p8, p9);
  wire r = p12 & p13;
  stage a (p10, r, p9), b (p11, r, p5), c (p5, r, p4), d (p4, r, p8);
endmodule
module t74x393 (input p1, p2, p12, p13, output p3, p4, p5, p6, p8, p9, p10, p11);
  stage a1 (p1, p2, p3), b1 (p3, p2, p4), c1 (p4, p2, p5), d1 (p5, p2, p6);
  stage a2 (p13, p12, p11), b2 (p11, p12, p10), c2 (p10, p12, p9), d2 (p9, p12, p8);
endmodule
module t4040 (input p10, p11, output p1, p2, p3, p4, p5, p6, p7, p9, p12, p13, p14, p15);
  stage s1 (p10, p11, p9), s2 (p9, p11, p7), s3 (p7, p11, p6), s4 (p6, p11, p5),
        s5 (p5, p11, p3), s6 (p3, p11, p2), s7 (p2, p11, p4), s8 (p4, p11, p13),
        s9 (p13, p11, p12), s10 (p12, p11, p14), s11 (p14, p11, p15), s12 (p15, p11, p1);
endmodule
// Pins 9 and 10 are the two inverters of the oscillator, which RESET stops.
module t4060 (input p11, p12, output p1, p2, p3, p4, p5, p6, p7, p9, p10, p13, p14, p15);
  wire q1, q2, q3, q11;
  nand first (p10, p11, ~p12);
  not second (p9, p10);
  stage s1 (p11, p12, q1), s2 (q1, p12, q2), s3 (q2, p12, q3), s4 (q3, p12, p7),
        s5 (p7, p12, p5), s6 (p5, p12, p4), s7 (p4, p12, p6), s8 (p6, p12, p14),
        s9 (p14, p12, p13), s10 (p13, p12, p15), s11 (p15, p12, q11), s12 (q11, p12, p1),
        s13 (p1, p12, p2), s14 (p2, p12, p3);
endmodule
// Clock and inhibit meet in a gate: the inhibit falling while the clock is high counts as well.
module t4017 (input p13, p14, p15, output p1, p2, p3, p4, p5, p6, p7, p9, p10, p11, p12);
  reg [9:0] q;
  wire t;
  rise edge_of (p14 & ~p13, t);
  always @(t) if (~p15) q = {q[8:0], q[9]};
  always @(p15) if (p15) q = 10'b1;
  assign {p11, p9, p6, p5, p1, p10, p7, p4, p2, p3} = q;
  assign p12 = |q[4:0];
endmodule
// The carry is not gated by the count enable, as in the ST sheet.
module t74x590 (input p10, p11, p12, p13, p14, output p1, p2, p3, p4, p5, p6, p7, p9, p15);
  wire [7:0] n;
  wire [7:0] q;
  register count (n + 8'd1, p11, ~p12, p10, n);
  register store (n, p13, 1'b1, 1'b1, q);
  assign {p7, p6, p5, p4, p3, p2, p1, p15} = p14 ? 8'bz : q;
  assign p9 = ~&n;
endmodule

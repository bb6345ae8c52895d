// Shift registers.
module t74x164 (input p1, p2, p8, p9, output p3, p4, p5, p6, p10, p11, p12, p13);
  wire [7:0] q;
  register r ({q[6:0], p1 & p2}, p8, 1'b1, p9, q);
  assign {p13, p12, p11, p10, p6, p5, p4, p3} = q;
endmodule
// The clock and its inhibit are the two inputs of one OR gate.
module t74x165 (input p1, p2, p3, p4, p5, p6, p10, p11, p12, p13, p14, p15, output p7, p9);
  reg [7:0] q;
  wire t;
  rise edge_of (p2 | p15, t);
  always @(t) if (p1) q = {q[6:0], p10};
  always @(p1 or p3 or p4 or p5 or p6 or p11 or p12 or p13 or p14)
    if (!p1) q = {p6, p5, p4, p3, p14, p13, p12, p11};
  assign p9 = q[7];
  assign p7 = ~q[7];
endmodule
module t74x166 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, p11, p12, p14, p15, output p13);
  wire [7:0] q;
  register r (p15 ? {q[6:0], p1} : {p14, p12, p11, p10, p5, p4, p3, p2}, p6 | p7, 1'b1, p9, q);
  assign p13 = q[7];
endmodule
module t74x194 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, p11, output p12, p13, p14, p15);
  reg [3:0] d;  // QA is the highest bit: a shift to the right goes from QA to QD
  wire [3:0] q;
  always @*
    case ({p10, p9})
      2'b00: d = q;
      2'b01: d = {p2, q[3:1]};
      2'b10: d = {q[2:0], p7};
      2'b11: d = {p3, p4, p5, p6};
    endcase
  register #(4) r (d, p11, 1'b1, p1, q);
  assign {p15, p14, p13, p12} = q;
endmodule
module t74x195 (input p1, p2, p3, p4, p5, p6, p7, p9, p10, output p11, p12, p13, p14, p15);
  reg first;
  wire [3:0] q;
  always @*
    case ({p2, p3})
      2'b00: first = 1'b0;
      2'b01: first = q[3];
      2'b10: first = ~q[3];
      2'b11: first = 1'b1;
    endcase
  register #(4) r (p9 ? {first, q[3:1]} : {p4, p5, p6, p7}, p10, 1'b1, p1, q);
  assign {p15, p14, p13, p12} = q;
  assign p11 = ~q[0];
endmodule
module t74x299 (input p1, p2, p3, p9, p11, p12, p18, p19, output p8, p17,
                inout p4, p5, p6, p7, p13, p14, p15, p16);
  reg [7:0] d;  // QA is the highest bit
  wire [7:0] q;
  wire [7:0] line = {p7, p13, p6, p14, p5, p15, p4, p16};
  always @*
    case ({p19, p1})
      2'b00: d = q;
      2'b01: d = {p11, q[7:1]};
      2'b10: d = {q[6:0], p18};
      2'b11: d = line;
    endcase
  register r (d, p12, 1'b1, p9, q);
  wire on = ~p2 & ~p3 & ~(p19 & p1);
  assign {p7, p13, p6, p14, p5, p15, p4, p16} = on ? q : 8'bz;
  assign p8 = q[7];
  assign p17 = q[0];
endmodule
module t74x595 (input p10, p11, p12, p13, p14, output p1, p2, p3, p4, p5, p6, p7, p9, p15);
  wire [7:0] s;
  wire [7:0] q;
  register shift (({s[6:0], p14}), p11, 1'b1, p10, s);
  register store (s, p12, 1'b1, 1'b1, q);
  assign {p7, p6, p5, p4, p3, p2, p1, p15} = p13 ? 8'bz : q;
  assign p9 = s[7];
endmodule

// Registers and octal latches.
module t74x173 (input p1, p2, p7, p9, p10, p11, p12, p13, p14, p15, output p3, p4, p5, p6);
  wire [3:0] q;
  register #(4) r ({p14, p13, p12, p11}, p7, ~p9 & ~p10, ~p15, q);
  assign {p3, p4, p5, p6} = ~p1 & ~p2 ? q : 4'bzzzz;
endmodule
module t74x174 (input p1, p3, p4, p6, p9, p11, p13, p14, output p2, p5, p7, p10, p12, p15);
  register #(6) r ({p3, p4, p6, p11, p13, p14}, p9, 1'b1, p1, {p2, p5, p7, p10, p12, p15});
endmodule
module t74x175 (input p1, p4, p5, p9, p12, p13, output p2, p3, p6, p7, p10, p11, p14, p15);
  register #(4) r ({p4, p5, p12, p13}, p9, 1'b1, p1, {p2, p7, p10, p15});
  assign {p3, p6, p11, p14} = ~{p2, p7, p10, p15};
endmodule
module t74x273 (input p1, p3, p4, p7, p8, p11, p13, p14, p17, p18,
                output p2, p5, p6, p9, p12, p15, p16, p19);
  register r ({p3, p4, p7, p8, p13, p14, p17, p18}, p11, 1'b1, p1,
              {p2, p5, p6, p9, p12, p15, p16, p19});
endmodule
module t74x377 (input p1, p3, p4, p7, p8, p11, p13, p14, p17, p18,
                output p2, p5, p6, p9, p12, p15, p16, p19);
  register r ({p3, p4, p7, p8, p13, p14, p17, p18}, p11, ~p1, 1'b1,
              {p2, p5, p6, p9, p12, p15, p16, p19});
endmodule
module t74x373 (input p1, p3, p4, p7, p8, p11, p13, p14, p17, p18,
                output p2, p5, p6, p9, p12, p15, p16, p19);
  wire [7:0] q;
  latches l ({p3, p4, p7, p8, p13, p14, p17, p18}, p11, q);
  assign {p2, p5, p6, p9, p12, p15, p16, p19} = p1 ? 8'bz : q;
endmodule
module t74x374 (input p1, p3, p4, p7, p8, p11, p13, p14, p17, p18,
                output p2, p5, p6, p9, p12, p15, p16, p19);
  wire [7:0] q;
  register r ({p3, p4, p7, p8, p13, p14, p17, p18}, p11, 1'b1, 1'b1, q);
  assign {p2, p5, p6, p9, p12, p15, p16, p19} = p1 ? 8'bz : q;
endmodule
module t74x573 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p11,
                output p12, p13, p14, p15, p16, p17, p18, p19);
  wire [7:0] q;
  latches l ({p2, p3, p4, p5, p6, p7, p8, p9}, p11, q);
  assign {p19, p18, p17, p16, p15, p14, p13, p12} = p1 ? 8'bz : q;
endmodule
module t74x574 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p11,
                output p12, p13, p14, p15, p16, p17, p18, p19);
  wire [7:0] q;
  register r ({p2, p3, p4, p5, p6, p7, p8, p9}, p11, 1'b1, 1'b1, q);
  assign {p19, p18, p17, p16, p15, p14, p13, p12} = p1 ? 8'bz : q;
endmodule
// Clear with the enable high: all low. Clear with the enable low: only the chosen output follows D.
module t74x259 (input p1, p2, p3, p13, p14, p15, output p4, p5, p6, p7, p9, p10, p11, p12);
  reg [7:0] q;
  always @(p1 or p2 or p3 or p13 or p14 or p15) begin
    if (!p15) q = 8'b0;
    if (!p14) q[{p3, p2, p1}] = p13;
  end
  assign {p12, p11, p10, p9, p7, p6, p5, p4} = q;
endmodule

// Flip-flops and latches. The 73, 76 and 107 are the edge-triggered LS forms.
module t74x73 (input p1, p2, p3, p5, p6, p7, p10, p14, output p8, p9, p12, p13);
  jkff a (p14, p3, ~p1, 1'b1, p2, p12, p13), b (p7, p10, ~p5, 1'b1, p6, p9, p8);
endmodule
module t74x107 (input p1, p4, p8, p9, p10, p11, p12, p13, output p2, p3, p5, p6);
  jkff a (p1, p4, ~p12, 1'b1, p13, p3, p2), b (p8, p11, ~p9, 1'b1, p10, p5, p6);
endmodule
module t74x74 (input p1, p2, p3, p4, p10, p11, p12, p13, output p5, p6, p8, p9);
  dff a (p2, p3, p4, p1, p5, p6), b (p12, p11, p10, p13, p9, p8);
endmodule
module t74x75 (input p2, p3, p4, p6, p7, p13, output p1, p8, p9, p10, p11, p14, p15, p16);
  latches #(2) a ({p2, p3}, p13, {p16, p15}), b ({p6, p7}, p4, {p10, p9});
  not n1 (p1, p16), n2 (p14, p15), n3 (p11, p10), n4 (p8, p9);
endmodule
module t74x76 (input p1, p2, p3, p4, p6, p7, p8, p9, p12, p16, output p10, p11, p14, p15);
  jkff a (p4, p16, ~p1, p2, p3, p15, p14), b (p9, p12, ~p6, p7, p8, p11, p10);
endmodule
module t74x109 (input p1, p2, p3, p4, p5, p11, p12, p13, p14, p15, output p6, p7, p9, p10);
  jkff a (p2, ~p3, p4, p5, p1, p6, p7), b (p14, ~p13, p12, p11, p15, p10, p9);
endmodule
module t74x112 (input p1, p2, p3, p4, p10, p11, p12, p13, p14, p15, output p5, p6, p7, p9);
  jkff a (p3, p2, ~p1, p4, p15, p5, p6), b (p11, p12, ~p13, p10, p14, p9, p7);
endmodule
// A low set input outweighs a low reset input at the only output.
module sr (input s_n, r_n, output reg q);
  always @(s_n or r_n) if (!s_n) q = 1'b1; else if (!r_n) q = 1'b0;
endmodule
module t74x279 (input p1, p2, p3, p5, p6, p10, p11, p12, p14, p15, output p4, p7, p9, p13);
  sr a (p2 & p3, p1, p4), b (p6, p5, p7), c (p11 & p12, p10, p9), d (p15, p14, p13);
endmodule
module t4013 (input p3, p4, p5, p6, p8, p9, p10, p11, output p1, p2, p12, p13);
  dff a (p5, p3, ~p6, ~p4, p1, p2), b (p9, p11, ~p8, ~p10, p13, p12);
endmodule

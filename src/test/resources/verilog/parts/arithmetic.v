// Adders, comparators, parity.
module t74x83 (input p1, p3, p4, p7, p8, p10, p11, p13, p16, output p2, p6, p9, p14, p15);
  assign {p14, p15, p2, p6, p9} = {p1, p3, p8, p10} + {p16, p4, p7, p11} + p13;
endmodule
module t74x283 (input p2, p3, p5, p6, p7, p11, p12, p14, p15, output p1, p4, p9, p10, p13);
  assign {p9, p10, p13, p1, p4} = {p12, p14, p3, p5} + {p11, p15, p2, p6} + p7;
endmodule
// Equal words pass on the cascade inputs; "equal" outweighs the others, of which neither being high
// makes both outputs high.
module t74x85 (input p1, p2, p3, p4, p9, p10, p11, p12, p13, p14, p15, output p5, p6, p7);
  wire [3:0] a = {p15, p13, p12, p10};
  wire [3:0] b = {p1, p14, p11, p9};
  assign p5 = a > b | a == b & ~p3 & ~p2;
  assign p7 = a < b | a == b & ~p3 & ~p4;
  assign p6 = a == b & p3;
endmodule
// With active-high data: both words are first mixed bit by bit, then added. A high carry pin means
// no carry, so the look-ahead pins tell of what makes, or passes on, no carry. The logic functions are
// the sums without carries, complemented.
module t74x181 (input p1, p2, p3, p4, p5, p6, p7, p8, p18, p19, p20, p21, p22, p23,
                output p9, p10, p11, p13, p14, p15, p16, p17);
  wire [3:0] a = {p19, p21, p23, p2};
  wire [3:0] b = {p18, p20, p22, p1};
  wire [3:0] x = a | b & {4{p6}} | ~b & {4{p5}};
  wire [3:0] y = a & ~b & {4{p4}} | a & b & {4{p3}};
  wire [4:0] sum = {1'b0, x} + {1'b0, y} + {4'b0, ~p7};
  wire [4:0] none = {1'b0, ~x} + {1'b0, ~y};
  wire [3:0] f = p8 ? ~(x ^ y) : sum[3:0];
  assign {p13, p11, p10, p9} = f;
  bufif1 equal (p14, 1'b0, ~&f);
  assign p15 = |y;
  assign p17 = ~none[4];
  assign p16 = ~sum[4];
endmodule
module t74x182 (input p1, p2, p3, p4, p5, p6, p13, p14, p15, output p7, p9, p10, p11, p12);
  wire [3:0] g = ~{p5, p14, p1, p3};
  wire [3:0] p = ~{p6, p15, p2, p4};
  assign p12 = g[0] | p[0] & p13;
  assign p11 = g[1] | p[1] & p12;
  assign p9 = g[2] | p[2] & p11;
  assign p10 = ~(g[3] | p[3] & (g[2] | p[2] & (g[1] | p[1] & g[0])));
  assign p7 = ~&p;
endmodule
module t74x280 (input p1, p2, p4, p8, p9, p10, p11, p12, p13, output p5, p6);
  xor odd (p6, p1, p2, p4, p8, p9, p10, p11, p12, p13);
  not even (p5, p6);
endmodule
module t74x521 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p11, p12, p13, p14, p15, p16, p17, p18,
                output p19);
  assign p19 = ~(~p1 & {p2, p4, p6, p8, p11, p13, p15, p17} ==
                       {p3, p5, p7, p9, p12, p14, p16, p18});
endmodule
module t74x688 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p11, p12, p13, p14, p15, p16, p17, p18,
                output p19);
  assign p19 = ~(~p1 & {p2, p4, p6, p8, p11, p13, p15, p17} ==
                       {p3, p5, p7, p9, p12, p14, p16, p18});
endmodule

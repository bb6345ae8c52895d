// Decoders and encoders.
module t74x42 (input p15, p14, p13, p12, output p1, p2, p3, p4, p5, p6, p7, p9, p10, p11);
  assign {p11, p10, p9, p7, p6, p5, p4, p3, p2, p1} = ~(10'b1 << {p12, p13, p14, p15});
endmodule

// Segments a to g of the old digits, whose 6 and 9 have no tails; 10 to 14 are odd signs.
module digit (input [3:0] code, output reg [6:0] lit);
  always @(code)
    case (code)
      0: lit = 7'b1111110;
      1: lit = 7'b0110000;
      2: lit = 7'b1101101;
      3: lit = 7'b1111001;
      4: lit = 7'b0110011;
      5: lit = 7'b1011011;
      6: lit = 7'b0011111;
      7: lit = 7'b1110000;
      8: lit = 7'b1111111;
      9: lit = 7'b1110011;
      10: lit = 7'b0001101;
      11: lit = 7'b0011001;
      12: lit = 7'b0100011;
      13: lit = 7'b1001011;
      14: lit = 7'b0001111;
      15: lit = 7'b0000000;
      default: lit = 7'bx;
    endcase
endmodule
module segments (input a, b, c, d, lt_n, rbi_n, inout bi_n, output [6:0] lit);
  wire [6:0] font;
  digit digits ({d, c, b, a}, font);
  bufif1 ripple (bi_n, 1'b0, lt_n & ~rbi_n & ~a & ~b & ~c & ~d);
  assign lit = bi_n ? (lt_n ? font : 7'b1111111) : 7'b0;
endmodule
module t74x47 (input p1, p2, p3, p5, p6, p7, inout p4, output p9, p10, p11, p12, p13, p14, p15);
  wire a, b, c, d, e, f, g;
  segments s (p7, p1, p2, p6, p3, p5, p4, {a, b, c, d, e, f, g});
  bufif1 sa (p13, 1'b0, a), sb (p12, 1'b0, b), sc (p11, 1'b0, c), sd (p10, 1'b0, d),
         se (p9, 1'b0, e), sf (p15, 1'b0, f), sg (p14, 1'b0, g);
endmodule
module t74x48 (input p1, p2, p3, p5, p6, p7, inout p4, output p9, p10, p11, p12, p13, p14, p15);
  segments s (p7, p1, p2, p6, p3, p5, p4, {p13, p12, p11, p10, p9, p15, p14});
endmodule
module t74x138 (input p1, p2, p3, p4, p5, p6, output p7, p9, p10, p11, p12, p13, p14, p15);
  wire on = p6 & ~p4 & ~p5;
  assign {p7, p9, p10, p11, p12, p13, p14, p15} = ~({7'b0, on} << {p3, p2, p1});
endmodule
module t74x139 (input p1, p2, p3, p13, p14, p15, output p4, p5, p6, p7, p9, p10, p11, p12);
  assign {p7, p6, p5, p4} = ~({3'b0, ~p1} << {p3, p2});
  assign {p9, p10, p11, p12} = ~({3'b0, ~p15} << {p13, p14});
endmodule
module t74x154 (input p18, p19, p20, p21, p22, p23,
                output p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p11, p13, p14, p15, p16, p17);
  assign {p17, p16, p15, p14, p13, p11, p10, p9, p8, p7, p6, p5, p4, p3, p2, p1} =
      ~({15'b0, ~p18 & ~p19} << {p20, p21, p22, p23});
endmodule
module t74x147 (input p1, p2, p3, p4, p5, p10, p11, p12, p13, output p6, p7, p9, p14);
  reg [3:0] code;
  always @* begin
    code = 0;
    if (!p11) code = 1;
    if (!p12) code = 2;
    if (!p13) code = 3;
    if (!p1) code = 4;
    if (!p2) code = 5;
    if (!p3) code = 6;
    if (!p4) code = 7;
    if (!p5) code = 8;
    if (!p10) code = 9;
  end
  assign {p14, p6, p7, p9} = ~code;
endmodule
module t74x148 (input p1, p2, p3, p4, p5, p10, p11, p12, p13, output p6, p7, p9, p14, p15);
  reg [2:0] code;
  wire any = ~&{p10, p11, p12, p13, p1, p2, p3, p4};
  always @* begin
    code = 0;
    if (!p11) code = 1;
    if (!p12) code = 2;
    if (!p13) code = 3;
    if (!p1) code = 4;
    if (!p2) code = 5;
    if (!p3) code = 6;
    if (!p4) code = 7;
  end
  assign {p6, p7, p9} = p5 ? 3'b111 : ~code;
  assign p14 = ~(~p5 & any);
  assign p15 = ~(~p5 & ~any);
endmodule

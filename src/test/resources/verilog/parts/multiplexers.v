// Multiplexers.
module t74x151 (input p1, p2, p3, p4, p7, p9, p10, p11, p12, p13, p14, p15, output p5, p6);
  wire [7:0] d = {p12, p13, p14, p15, p1, p2, p3, p4};
  assign p5 = ~p7 & d[{p9, p10, p11}];
  assign p6 = ~p5;
endmodule
module t74x251 (input p1, p2, p3, p4, p7, p9, p10, p11, p12, p13, p14, p15, output p5, p6);
  wire [7:0] d = {p12, p13, p14, p15, p1, p2, p3, p4};
  wire y = d[{p9, p10, p11}];
  bufif0 t (p5, y, p7);
  notif0 w (p6, y, p7);
endmodule
module t74x153 (input p1, p2, p3, p4, p5, p6, p10, p11, p12, p13, p14, p15, output p7, p9);
  wire [3:0] c1 = {p3, p4, p5, p6};
  wire [3:0] c2 = {p13, p12, p11, p10};
  assign p7 = ~p1 & c1[{p2, p14}];
  assign p9 = ~p15 & c2[{p2, p14}];
endmodule
module t74x253 (input p1, p2, p3, p4, p5, p6, p10, p11, p12, p13, p14, p15, output p7, p9);
  wire [3:0] c1 = {p3, p4, p5, p6};
  wire [3:0] c2 = {p13, p12, p11, p10};
  bufif0 one (p7, c1[{p2, p14}], p1), two (p9, c2[{p2, p14}], p15);
endmodule
module t74x157 (input p1, p2, p3, p5, p6, p10, p11, p13, p14, p15, output p4, p7, p9, p12);
  assign {p4, p7, p9, p12} =
      p15 ? 4'b0000 : p1 ? {p3, p6, p10, p13} : {p2, p5, p11, p14};
endmodule
module t74x158 (input p1, p2, p3, p5, p6, p10, p11, p13, p14, p15, output p4, p7, p9, p12);
  assign {p4, p7, p9, p12} =
      p15 ? 4'b1111 : ~(p1 ? {p3, p6, p10, p13} : {p2, p5, p11, p14});
endmodule
module t74x257 (input p1, p2, p3, p5, p6, p10, p11, p13, p14, p15, output p4, p7, p9, p12);
  assign {p4, p7, p9, p12} =
      p15 ? 4'bzzzz : p1 ? {p3, p6, p10, p13} : {p2, p5, p11, p14};
endmodule
module t74x258 (input p1, p2, p3, p5, p6, p10, p11, p13, p14, p15, output p4, p7, p9, p12);
  assign {p4, p7, p9, p12} =
      p15 ? 4'bzzzz : ~(p1 ? {p3, p6, p10, p13} : {p2, p5, p11, p14});
endmodule

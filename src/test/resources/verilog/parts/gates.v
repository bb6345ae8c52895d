// Gates and inverters.
module t74x00 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  nand a (p3, p1, p2), b (p6, p4, p5), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t74x02 (input p2, p3, p5, p6, p8, p9, p11, p12, output p1, p4, p10, p13);
  nor a (p1, p2, p3), b (p4, p5, p6), c (p10, p8, p9), d (p13, p11, p12);
endmodule
module t74x04 (input p1, p3, p5, p9, p11, p13, output p2, p4, p6, p8, p10, p12);
  not a (p2, p1), b (p4, p3), c (p6, p5), d (p8, p9), e (p10, p11), f (p12, p13);
endmodule
module t74x14 (input p1, p3, p5, p9, p11, p13, output p2, p4, p6, p8, p10, p12);
  not a (p2, p1), b (p4, p3), c (p6, p5), d (p8, p9), e (p10, p11), f (p12, p13);
endmodule
// Open collector: pulls low or lets go.
module t74x05 (input p1, p3, p5, p9, p11, p13, output p2, p4, p6, p8, p10, p12);
  bufif1 a (p2, 1'b0, p1), b (p4, 1'b0, p3), c (p6, 1'b0, p5), d (p8, 1'b0, p9),
         e (p10, 1'b0, p11), f (p12, 1'b0, p13);
endmodule
module t74x08 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  and a (p3, p1, p2), b (p6, p4, p5), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t74x10 (input p1, p2, p13, p3, p4, p5, p9, p10, p11, output p12, p6, p8);
  nand a (p12, p1, p2, p13), b (p6, p3, p4, p5), c (p8, p9, p10, p11);
endmodule
module t74x11 (input p1, p2, p13, p3, p4, p5, p9, p10, p11, output p12, p6, p8);
  and a (p12, p1, p2, p13), b (p6, p3, p4, p5), c (p8, p9, p10, p11);
endmodule
module t74x20 (input p1, p2, p4, p5, p9, p10, p12, p13, output p6, p8);
  nand a (p6, p1, p2, p4, p5), b (p8, p9, p10, p12, p13);
endmodule
module t74x21 (input p1, p2, p4, p5, p9, p10, p12, p13, output p6, p8);
  and a (p6, p1, p2, p4, p5), b (p8, p9, p10, p12, p13);
endmodule
module t74x27 (input p1, p2, p13, p3, p4, p5, p9, p10, p11, output p12, p6, p8);
  nor a (p12, p1, p2, p13), b (p6, p3, p4, p5), c (p8, p9, p10, p11);
endmodule
module t74x30 (input p1, p2, p3, p4, p5, p6, p11, p12, output p8);
  nand a (p8, p1, p2, p3, p4, p5, p6, p11, p12);
endmodule
module t74x32 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  or a (p3, p1, p2), b (p6, p4, p5), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t74x86 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  xor a (p3, p1, p2), b (p6, p4, p5), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t74x132 (input p1, p2, p4, p5, p9, p10, p12, p13, output p3, p6, p8, p11);
  nand a (p3, p1, p2), b (p6, p4, p5), c (p8, p9, p10), d (p11, p12, p13);
endmodule
module t4001 (input p1, p2, p5, p6, p8, p9, p12, p13, output p3, p4, p10, p11);
  nor a (p3, p1, p2), b (p4, p5, p6), c (p10, p8, p9), d (p11, p12, p13);
endmodule
module t4011 (input p1, p2, p5, p6, p8, p9, p12, p13, output p3, p4, p10, p11);
  nand a (p3, p1, p2), b (p4, p5, p6), c (p10, p8, p9), d (p11, p12, p13);
endmodule
module t4069 (input p1, p3, p5, p9, p11, p13, output p2, p4, p6, p8, p10, p12);
  not a (p2, p1), b (p4, p3), c (p6, p5), d (p8, p9), e (p10, p11), f (p12, p13);
endmodule
module t4081 (input p1, p2, p5, p6, p8, p9, p12, p13, output p3, p4, p10, p11);
  and a (p3, p1, p2), b (p4, p5, p6), c (p10, p8, p9), d (p11, p12, p13);
endmodule

// Memories. A word is written while the write input is low.
module cells #(parameter A = 4, parameter N = 4)
    (input [A-1:0] address, input [N-1:0] d, input write, output [N-1:0] q);
  reg [N-1:0] words [0:(1 << A) - 1];
  always @(address or d or write) if (write) words[address] = d;
  assign q = words[address];
endmodule
module t74x189 (input p1, p2, p3, p4, p6, p10, p12, p13, p14, p15, output p5, p7, p9, p11);
  wire [3:0] q;
  cells m ({p13, p14, p15, p1}, {p12, p10, p6, p4}, ~p2 & ~p3, q);
  assign {p11, p9, p7, p5} = ~p2 & p3 ? ~q : 4'bz;
endmodule
module t74x219 (input p1, p2, p3, p4, p6, p10, p12, p13, p14, p15, output p5, p7, p9, p11);
  wire [3:0] q;
  cells m ({p13, p14, p15, p1}, {p12, p10, p6, p4}, ~p2 & ~p3, q);
  assign {p11, p9, p7, p5} = ~p2 & p3 ? q : 4'bz;
endmodule
module t74x670 (input p1, p2, p3, p4, p5, p11, p12, p13, p14, p15, output p6, p7, p9, p10);
  reg [3:0] words [0:3];
  always @(p1 or p2 or p3 or p15 or p12 or p13 or p14)
    if (!p12) words[{p13, p14}] = {p3, p2, p1, p15};
  assign {p6, p7, p9, p10} = p11 ? 4'bz : words[{p4, p5}];
endmodule
module t2114 (input p1, p2, p3, p4, p5, p6, p7, p8, p10, p15, p16, p17, inout p11, p12, p13, p14);
  wire [3:0] q;
  cells #(10, 4) m ({p15, p16, p17, p1, p2, p3, p4, p7, p6, p5}, {p11, p12, p13, p14},
                    ~p8 & ~p10, q);
  assign {p11, p12, p13, p14} = ~p8 & p10 ? q : 4'bz;
endmodule
// 8 bits wide with an output enable: RAM and EEPROM, the latter without its milliseconds. WRITES
// tells whether a low output enable forbids writing.
module bytes #(parameter A = 11, parameter [0:0] WRITES = 1)
    (input [A-1:0] address, input cs_n, oe_n, we_n, inout [7:0] io);
  wire [7:0] q;
  cells #(A, 8) m (address, io, ~cs_n & ~we_n & (WRITES | oe_n), q);
  assign io = ~cs_n & ~oe_n & we_n ? q : 8'bz;
endmodule
module t6116 (input p1, p2, p3, p4, p5, p6, p7, p8, p18, p19, p20, p21, p22, p23,
              inout p9, p10, p11, p13, p14, p15, p16, p17);
  bytes #(11, 1) b ({p19, p22, p23, p1, p2, p3, p4, p5, p6, p7, p8}, p18, p20, p21,
                    {p17, p16, p15, p14, p13, p11, p10, p9});
endmodule
module t28C16 (input p1, p2, p3, p4, p5, p6, p7, p8, p18, p19, p20, p21, p22, p23,
               inout p9, p10, p11, p13, p14, p15, p16, p17);
  bytes #(11, 0) b ({p19, p22, p23, p1, p2, p3, p4, p5, p6, p7, p8}, p18, p20, p21,
                    {p17, p16, p15, p14, p13, p11, p10, p9});
endmodule
module t62256 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p20, p21, p22, p23, p24, p25, p26, p27,
               inout p11, p12, p13, p15, p16, p17, p18, p19);
  bytes #(15, 1) b ({p1, p26, p2, p23, p21, p24, p25, p3, p4, p5, p6, p7, p8, p9, p10},
                    p20, p22, p27, {p19, p18, p17, p16, p15, p13, p12, p11});
endmodule
module t28C256 (input p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p20, p21, p22, p23, p24, p25, p26, p27,
                inout p11, p12, p13, p15, p16, p17, p18, p19);
  bytes #(15, 0) b ({p1, p26, p2, p23, p21, p24, p25, p3, p4, p5, p6, p7, p8, p9, p10},
                    p20, p22, p27, {p19, p18, p17, p16, p15, p13, p12, p11});
endmodule
module t28C64 (input p2, p3, p4, p5, p6, p7, p8, p9, p10, p20, p21, p22, p23, p24, p25, p27, output p1,
               inout p11, p12, p13, p15, p16, p17, p18, p19);
  assign p1 = 1'bz;
  bytes #(13, 0) b ({p2, p23, p21, p24, p25, p3, p4, p5, p6, p7, p8, p9, p10},
                    p20, p22, p27, {p19, p18, p17, p16, p15, p13, p12, p11});
endmodule

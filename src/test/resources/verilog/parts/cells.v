// Flip-flops and edges that the parts here are made of. Each part is a module named t<type> whose
// ports are its pins by number. All is written from the functions in the makers' data books, from
// memory, and without regard to the part files, which it is compared with.

// Turns tick over at each sure rising edge. What a clock did before it was known is no edge.
module rise (input c, output reg tick);
  reg was;
  initial tick = 1'b0;
  always @(c) begin
    if (was === 1'b0 && c === 1'b1) tick = ~tick;
    was = c;
  end
endmodule

// D flip-flop, rising edge. Preset and clear at once make both outputs high.
module dff (input d, c, pre_n, clr_n, output q, qn);
  reg s;
  wire t;
  rise edge_of (c, t);
  always @(t) if (pre_n & clr_n) s = d;
  always @(pre_n or clr_n) if (!clr_n) s = 1'b0; else if (!pre_n) s = 1'b1;
  assign q = s | ~pre_n;
  assign qn = ~s | ~clr_n;
endmodule

// JK flip-flop, rising edge of c.
module jkff (input j, k, c, pre_n, clr_n, output q, qn);
  reg s;
  wire t;
  rise edge_of (c, t);
  always @(t) if (pre_n & clr_n)
    case ({j, k})
      2'b00: s = s;
      2'b01: s = 1'b0;
      2'b10: s = 1'b1;
      2'b11: s = ~s;
    endcase
  always @(pre_n or clr_n) if (!clr_n) s = 1'b0; else if (!pre_n) s = 1'b1;
  assign q = s | ~pre_n;
  assign qn = ~s | ~clr_n;
endmodule

// One stage of a ripple counter: turns over at each falling edge.
module stage (input c, clr, output q);
  jkff s (1'b1, 1'b1, ~c, 1'b1, ~clr, q,);
endmodule

// Register of equal flip-flops with an asynchronous clear.
module register #(parameter N = 8) (input [N-1:0] d, input c, load, clr_n, output reg [N-1:0] q);
  wire t;
  rise edge_of (c, t);
  always @(t) if (clr_n & load) q = d;
  always @(clr_n) if (!clr_n) q = {N{1'b0}};
endmodule

// Transparent latches.
module latches #(parameter N = 8) (input [N-1:0] d, input open, output reg [N-1:0] q);
  always @(d or open) if (open) q = d;
endmodule

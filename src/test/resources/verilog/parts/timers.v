// Timers without their time: a high level at the timing pin stands for the charged capacitor.
module t555 (input p2, p4, p5, p6, output p3, p7);
  reg q;
  always @(p2 or p4 or p6)
    if (!p4) q = 1'b0;
    else if (!p2) q = 1'b1;
    else if (p6) q = 1'b0;
  assign p3 = q;
  bufif0 discharge (p7, 1'b0, q);
endmodule
module oneshot (input trigger, charged, clr_n, output reg q);
  wire t;
  rise edge_of (trigger, t);
  always @(t) if (clr_n & ~charged) q = 1'b1;
  always @(clr_n or charged) if (!clr_n | charged) q = 1'b0;
endmodule
module t74x121 (input p3, p4, p5, p9, p10, p11, output p1, p6);
  oneshot s (p5 & (~p3 | ~p4), p11, 1'b1, p6);
  not n (p1, p6);
endmodule
module t74x123 (input p1, p2, p3, p6, p7, p9, p10, p11, p14, p15, output p4, p5, p12, p13);
  oneshot a (~p1 & p2 & p3, p15, p3, p13), b (~p9 & p10 & p11, p7, p11, p5);
  not na (p4, p13), nb (p12, p5);
endmodule

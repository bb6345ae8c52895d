// 16 x 4 static RAM, three-state. Pins and function: Fairchild 74F189 function table (CS low and WE
// low writes with the outputs off, CS low and WE high shows the complement of the stored word, CS
// high lets go); National DM74S189 write and read description; pin list of the Philips 74F189A.
// The 74x219 shows the stored word itself: Philips 74F219A.
//
// What is not known to a real part's surroundings is carried as x: a write that may or may not
// happen, or may go to several addresses, leaves x in every bit it may have changed; a read that
// may come from several addresses is x in the bits in which they differ.
module ram #(parameter FAMILY = "LS", parameter FEED = "FULL", parameter COMPLEMENT = 1)
    (input p1, input p2, input p3, input p4, inout p5, input p6, inout p7, inout p9, input p10,
     inout p11, input p12, input p13, input p14, input p15, input alive);
  localparam LEANS = FEED != "NONE";
  wire cs, we, works;
  wire [3:0] a, d;
  in_pin #(FAMILY, LEANS) i1 (p1, a[0]);
  in_pin #(FAMILY, LEANS) i15 (p15, a[1]);
  in_pin #(FAMILY, LEANS) i14 (p14, a[2]);
  in_pin #(FAMILY, LEANS) i13 (p13, a[3]);
  in_pin #(FAMILY, LEANS) i2 (p2, cs);
  in_pin #(FAMILY, LEANS) i3 (p3, we);
  in_pin #(FAMILY, LEANS) i4 (p4, d[0]);
  in_pin #(FAMILY, LEANS) i6 (p6, d[1]);
  in_pin #(FAMILY, LEANS) i10 (p10, d[2]);
  in_pin #(FAMILY, LEANS) i12 (p12, d[3]);
  feed #(FEED, 10) power ({a, d, cs, we}, works);

  reg [3:0] cells [0:15];
  reg [3:0] word;
  reg inputs_moved;
  integer i;

  initial inputs_moved = 0;

  // All inputs that move at one time are seen together.
  always @(a or d or cs or we or works or alive) inputs_moved <= ~inputs_moved;

  // Whether the address, as far as it is known, may mean this place.
  function may_be(input [3:0] address, input [3:0] here);
    integer b;
    begin
      may_be = 1;
      for (b = 0; b < 4; b = b + 1)
        if (address[b] === ~here[b]) may_be = 0;
    end
  endfunction

  function [3:0] either(input [3:0] x, input [3:0] y);
    integer b;
    for (b = 0; b < 4; b = b + 1)
      either[b] = x[b] === y[b] ? x[b] : 1'bx;
  endfunction

  wire perhaps_writes = works === 1'b1 && alive === 1'b1 && cs !== 1'b1 && we !== 1'b1;
  wire writes = cs === 1'b0 && we === 1'b0;
  reg first;
  always @(inputs_moved) begin
    if (works === 1'bx || alive !== 1'b1)
      for (i = 0; i < 16; i = i + 1) cells[i] = 4'bx;
    if (^a !== 1'bx) begin
      if (perhaps_writes) cells[a] = writes ? d : either(cells[a], d);
      word = cells[a];
    end else begin
      first = 1;
      for (i = 0; i < 16; i = i + 1)
        if (may_be(a, i)) begin
          if (perhaps_writes) cells[i] = either(cells[i], d);
          word = first ? cells[i] : either(word, cells[i]);
          first = 0;
        end
    end
  end

  wire [3:0] q = COMPLEMENT ? ~word : word;
  wire on = ~cs & we;
  three_state #(FAMILY) o5 (p5, q[0], on, works);
  three_state #(FAMILY) o7 (p7, q[1], on, works);
  three_state #(FAMILY) o9 (p9, q[2], on, works);
  three_state #(FAMILY) o11 (p11, q[3], on, works);
endmodule

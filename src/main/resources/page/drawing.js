// Draws the module: chips seen from above, controls, lamps. Only SVG and text, no pictures.

const SVG = "http://www.w3.org/2000/svg";

/** An element with attributes and children; text is always text, never markup. */
export function make(name, attributes = {}, ...children) {
  return fill(document.createElement(name), attributes, children);
}

function draw(name, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, name), attributes, children);
}

function fill(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) {
      element.addEventListener(key.slice(2), value);
    } else if (value !== false && value !== undefined) {
      element.setAttribute(key, value === true ? "" : value);
    }
  }
  element.append(...children);
  return element;
}

const PITCH = 22;
const LEG = 13;
const BODY = 152;
const WIDTH = BODY + 2 * LEG + 36;

/**
 * Where each pin lies with the notch up: counted down the left side, then up the right one. With
 * the notch left the same picture is turned a quarter, and the words are turned back.
 */
function places(pins, left) {
  const half = pins.length / 2;
  return pins.map((pin) => {
    const onLeft = pin.number <= half;
    const row = onLeft ? pin.number - 1 : pins.length - pin.number;
    return left
      ? { pin, x: 30 + PITCH * 1.7 * row, y: onLeft ? 130 : 18, side: onLeft ? "below" : "above" }
      : { pin, x: onLeft ? 18 + LEG : WIDTH - 18 - LEG, y: 26 + PITCH * row, side: onLeft ? "left" : "right" };
  });
}

/** One chip. `marks` maps "U1.3" to {touch: true} or {rank: 1}. */
export function chip(part, { left, marks, onpin, beside }) {
  const half = part.pins.length / 2;
  const width = left ? 60 + PITCH * 1.7 * (half - 1) : WIDTH;
  const height = left ? 148 : 38 + PITCH * (half - 1) + 14;
  const picture = draw("svg", {
    viewBox: `0 0 ${width} ${height}`,
    class: left ? "chip lying" : "chip",
    role: "group",
    "aria-label": `${part.label}, ${part.type} ${part.family}, notch ${left ? "left" : "up"}`,
  });
  picture.append(left ? lying(width) : standing(height));
  const middle = left
    ? draw("text", { x: width / 2, y: 74, class: "name" }, part.label)
    : draw("text", { x: width / 2, y: height / 2, class: "name" }, part.label);
  const type = left
    ? draw("text", { x: width / 2, y: 88, class: "type" }, `${part.type} ${part.family}`)
    : draw("text", { x: width / 2, y: height / 2 + 13, class: "type" }, part.type);
  picture.append(middle, type);
  for (const place of places(part.pins, left)) {
    picture.append(pinAt(part, place, marks, onpin));
  }
  return make("figure", { class: "part", id: beside ? false : `part-${part.label}` }, picture,
    make("figcaption", {}, `${part.label} ${part.type}${part.note ? ", " + part.note : ""}`));
}

function standing(height) {
  const l = 18 + LEG, r = WIDTH - 18 - LEG, m = WIDTH / 2, b = height - 4;
  return draw("path", { class: "body", d: `M${l} 8H${m - 9}a9 9 0 0 0 18 0H${r}V${b}H${l}Z` });
}

function lying(width) {
  return draw("path", { class: "body", d: `M8 31H${width - 8}V117H8V83a9 9 0 0 0 0-18Z` });
}

function pinAt(part, { pin, x, y, side }, marks, onpin) {
  const end = `${part.label}.${pin.number}`;
  const mark = marks[end] || {};
  const words = `${part.label} pin ${pin.number}, ${pin.name}` +
    (pin.net ? `, line ${pin.net}` : ", not wired") +
    (mark.touch ? ", touch here" : "") + (mark.ranks ? `, in suspect ${mark.ranks.join(" and ")}` : "");
  const group = draw("g", {
    class: "pin" + (mark.touch ? " touch" : "") + (mark.ranks ? " suspected" : ""),
    tabindex: "0", role: "button", "aria-label": words, "data-end": end,
    onclick: () => onpin(part, pin),
    onkeydown: (e) => { if (e.key === "Enter" || e.key === " ") { e.preventDefault(); onpin(part, pin); } },
  });
  const upright = side === "left" || side === "right";
  const out = side === "left" || side === "above" ? -1 : 1;
  if (upright) {
    group.append(
      draw("rect", { x: x + (out < 0 ? -LEG - 18 : -60), y: y - PITCH / 2, width: LEG + 78, height: PITCH, class: "reach" }),
      draw("rect", { x: out < 0 ? x - LEG : x, y: y - 3.5, width: LEG, height: 7, class: "leg" }),
      draw("text", { x: x - out * 17, y: y + 4, class: "pin-name " + side }, pin.name),
      draw("text", { x: x - out * 3, y: y + 4, class: "number " + side }, pin.number));
  } else {
    const edge = side === "above" ? 31 : 117;
    group.append(
      draw("rect", { x: x - PITCH * 0.8, y: side === "above" ? 0 : 96, width: PITCH * 1.6, height: 52, class: "reach" }),
      draw("rect", { x: x - 3.5, y: side === "above" ? edge - LEG : edge, width: 7, height: LEG, class: "leg" }),
      draw("text", { x, y: side === "above" ? edge + 11 : edge - 4, class: "number" }, pin.number),
      draw("text", { x, y: side === "above" ? edge + 23 : edge - 15, class: "pin-name" }, pin.name));
  }
  const tip = upright ? { x: x + out * (LEG + 9), y } : { x, y: y + out * 6 };
  if (mark.ranks) {
    group.append(
      draw("rect", { x: tip.x - 8, y: tip.y - 8, width: 16, height: 16, class: "flag" }),
      draw("text", { x: tip.x, y: tip.y + 4, class: "flag-text" }, mark.ranks[0]));
  }
  if (mark.touch) {
    group.append(draw("path", { class: "pointer", d: pointer(tip, side) }));
  }
  return group;
}

/** An arrow head that points at the leg from outside. */
function pointer({ x, y }, side) {
  switch (side) {
    case "left": return `M${x + 9} ${y}l-17 -9v18Z`;
    case "right": return `M${x - 9} ${y}l17 -9v18Z`;
    case "above": return `M${x} ${y + 9}l-9 -15h18Z`;
    default: return `M${x} ${y - 9}l-9 15h18Z`;
  }
}

const SEEN = { 1: "lit", 0: "dark", d: "dim", f: "flickering", "-": "not looked at", "?": "either" };

/** A probability as a length; the number stands beside it. */
export function oddsBar(probability) {
  return draw("svg", { viewBox: "0 0 120 10", class: "odds-bar", "aria-hidden": "true", preserveAspectRatio: "none" },
    draw("path", { d: "M0 9.5H120", class: "base" }),
    draw("rect", { x: 0, y: 1, width: Math.max(1, 120 * probability), height: 8, class: "share" }));
}

/** What a mark of a lamp word means. */
export function lampWord(mark) {
  return SEEN[mark] || "either";
}

/** A lamp by shape as much as by light: full, empty, half, zigzag, dashed. */
export function lampShape(mark) {
  const s = draw("svg", { viewBox: "0 0 40 40", class: "lamp mark-" + (mark === "-" || mark === "?" ? "none" : mark), "aria-hidden": "true" });
  s.append(draw("circle", { cx: 20, cy: 20, r: 14, class: "glass" }));
  if (mark === "1") {
    s.append(draw("circle", { cx: 20, cy: 20, r: 10, class: "glow" }),
      draw("path", { class: "rays", d: "M20 1v4M20 35v4M1 20h4M35 20h4M6.5 6.5l3 3M30.5 30.5l3 3M33.500 6.500l-3 3M9.500 30.500l-3 3" }));
  } else if (mark === "d") {
    s.append(draw("path", { d: "M10 20a10 10 0 0 0 20 0Z", class: "glow" }));
  } else if (mark === "f") {
    s.append(draw("path", { d: "M10 24l5-9 5 10 5-10 5 9", class: "zigzag" }));
  } else if (mark === "-" || mark === "?") {
    s.append(draw("path", { d: "M14 20h12", class: "zigzag" }));
  }
  return s;
}

/** Two rows of a board and the wire between them, for a suspect that is a wire. */
export function closeUp(module, ends) {
  const pins = ends.map((end) => pinOf(module, end));
  const picture = draw("svg", { viewBox: "0 0 320 96", class: "close-up", role: "img",
    "aria-label": "Close-up: " + pins.map((p) => p.words).join(" and ") });
  pins.slice(0, 2).forEach((p, i) => {
    const x = i === 0 ? 8 : 192;
    picture.append(
      draw("rect", { x, y: 14, width: 120, height: 58, class: "body" }),
      draw("text", { x: x + 60, y: 36, class: "name" }, p.label),
      draw("text", { x: x + 60, y: 53, class: "type" }, p.number ? `${p.number} ${p.name}` : p.name),
      draw("text", { x: x + 60, y: 90, class: "where" }, p.where));
  });
  if (pins.length > 1) {
    picture.append(
      draw("path", { d: "M128 43H150M170 43H192", class: "wire" }),
      draw("path", { d: "M153 34l14 18M167 34l-14 18", class: "cross" }));
  }
  return picture;
}

function pinOf(module, end) {
  const part = module.parts.find((p) => end.startsWith(p.label + "."));
  if (!part) {
    return { label: end, name: "", number: 0, where: "", words: end };
  }
  const number = Number(end.slice(part.label.length + 1));
  const pin = part.pins[number - 1];
  const half = part.pins.length / 2;
  const where = number <= half
    ? `left row, ${number}. from the notch`
    : `right row, ${part.pins.length - number + 1}. from the notch`;
  return { label: part.label, name: pin.name, number, where, words: `${part.label} pin ${number} ${pin.name}, ${where}` };
}

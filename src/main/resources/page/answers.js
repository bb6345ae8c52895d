// What a finger needs to answer the step asked for. Gives back elements; `send` takes the line.

import { make, lampShape, lampWord } from "/drawing.js";

const MARKS = ["1", "0", "d", "f", "-"];

function big(text, send, line, small) {
  return make("button", { type: "button", class: "answer", onclick: () => send(line) }, make("strong", {}, text),
    ...(small ? [make("small", {}, small)] : []));
}

/** "if it is 1 or 3" for each different reading, the first suspect's first. */
function readings(step) {
  const ranks = new Map();
  step.expected.forEach((reading, i) => {
    if (reading) {
      ranks.set(reading, [...(ranks.get(reading) || []), i + 1]);
    }
  });
  return [...ranks].map(([reading, who]) => ({
    reading,
    who: step.purpose === "search" ? "if it is " + who.join(" or ") : "with nothing wrong",
  }));
}

/** The step's answers; `lamps` keeps what was tapped while the step stays the same. */
export function answers(module, step, how, lamps, send) {
  const read = step.read;
  const box = make("div", { class: "answers" });
  if (read.seen) {
    box.append(...lampAnswers(module, step, lamps, send));
  } else if (typeof read.measured === "string") {
    box.append(...voltAnswers(step, send));
  } else if (Array.isArray(read.measured)) {
    box.append(roundAnswers(read.measured, send));
  } else if (read.probed) {
    for (const [word, means] of [["low", "low"], ["high", "high"], ["neither", "open, neither lights"], ["pulses", "pulses"]]) {
      box.append(big(means, send, { answer: word }, whom(step, word)));
    }
  } else if (read.continuity) {
    box.append(big("It beeps", send, { answer: "yes" }, whom(step, "yes")), big("No beep", send, { answer: "no" }, whom(step, "no")));
  } else if (read.inspected) {
    box.append(big("As it should be", send, { answer: "ok" }, whom(step, "ok")), big("Wrong", send, { answer: "wrong" }, whom(step, "wrong")));
  } else if (read.exchanged) {
    box.append(big("Done", send, { answer: "done" }));
  } else if (read.symptom) {
    box.append(big("Yes", send, { answer: "yes" }, whom(step, "yes")), big("No", send, { answer: "no" }, whom(step, "no")));
  } else {
    box.append(typed(how, send));
  }
  box.append(make("button", { type: "button", class: "unsure", onclick: () => send({ command: "dont-know" }) }, "Don't know"));
  return box;
}

function whom(step, word) {
  const found = readings(step).find((r) => r.reading.startsWith(word) || (word === "yes" && r.reading.includes("beep")));
  return found ? found.who : "";
}

function voltAnswers(step, send) {
  const shown = [];
  for (const { reading, who } of readings(step)) {
    const number = reading.match(/-?\d+(\.\d+)?/);
    if (number) {
      shown.push(big(reading, send, { answer: number[0] }, `${who}; enters ${number[0]} V`));
    }
  }
  return [...shown, pad("Volts on the meter", (volts) => send({ answer: volts }))];
}

/** A number pad, for a thumb; a keyboard may type into its field as well. */
function pad(label, enter) {
  const field = make("input", { id: "volts", inputmode: "decimal", autocomplete: "off", maxlength: "8", "aria-label": label });
  const form = make("form", { class: "pad", onsubmit: (e) => { e.preventDefault(); if (field.value.trim()) { enter(field.value.trim()); } } });
  form.append(make("label", { for: "volts" }, label), field);
  const keys = make("div", { class: "keys" });
  for (const key of ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0", ".", "-"]) {
    keys.append(make("button", { type: "button", onclick: () => { field.value += key; } }, key));
  }
  keys.append(
    make("button", { type: "button", "aria-label": "delete the last figure", onclick: () => { field.value = field.value.slice(0, -1); } }, "⌫"),
    make("button", { type: "submit", class: "enter" }, "Enter volts"));
  form.append(keys);
  return form;
}

function roundAnswers(points, send) {
  const form = make("form", { class: "round" });
  const fields = points.map((point, i) => {
    const field = make("input", { id: "round-" + i, inputmode: "decimal", autocomplete: "off", maxlength: "8" });
    form.append(make("label", { for: "round-" + i }, point.replace("/row", " row")), field);
    return field;
  });
  form.append(make("button", { type: "submit", class: "enter" }, "Enter all"));
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    send({ answer: fields.map((f) => f.value.trim() || "?").join(" ") });
  });
  return form;
}

function typed(how, send) {
  const field = make("input", { id: "typed", autocomplete: "off", maxlength: "100" });
  return make("form", { class: "round", onsubmit: (e) => { e.preventDefault(); send({ answer: field.value }); } },
    make("label", { for: "typed" }, how), field, make("button", { type: "submit", class: "enter" }, "Enter"));
}

/** "memory 1001, bus 0000" as marks by word; a place left open is not looked at. */
function marksOf(reading) {
  const marks = {};
  for (const piece of reading.split(",")) {
    const [word, bits] = piece.trim().split(/\s+/);
    if (bits) {
      marks[word] = bits.replace(/[^01df]/g, "-");
    }
  }
  return marks;
}

function lampAnswers(module, step, lamps, send) {
  const words = step.read.seen.map((label) =>
    module["lamp-words"].find((w) => w.label === label) || { label, members: [label] });
  const fills = readings(step);
  const first = fills.length ? marksOf(fills[0].reading) : {};
  for (const word of words) {
    if (!lamps[word.label]) {
      const marks = first[word.label] || "";
      lamps[word.label] = word.members.map((_, i) => marks[i] || "-");
    }
  }
  const rows = make("div", { class: "lamp-rows" });
  const paint = () => rows.replaceChildren(...words.map((word) => lampRow(module, word, lamps[word.label], paint)));
  paint();
  const choose = make("div", { class: "fill" });
  for (const { reading, who } of fills.length > 1 ? fills : []) {
    choose.append(make("button", { type: "button", onclick: () => {
      const marks = marksOf(reading);
      for (const word of words) {
        if (marks[word.label]) {
          lamps[word.label] = word.members.map((_, i) => marks[word.label][i] || "-");
        }
      }
      paint();
    } }, "Show " + who.replace("if it is", "as for suspect")));
  }
  for (const [mark, text] of [["1", "all lit"], ["0", "all dark"], ["-", "none looked at"]]) {
    choose.append(make("button", { type: "button", onclick: () => {
      words.forEach((word) => { lamps[word.label] = word.members.map(() => mark); });
      paint();
    } }, text));
  }
  const enter = make("button", { type: "button", class: "answer", onclick: () => {
    const seen = {};
    words.forEach((word) => { seen[word.label] = lamps[word.label].join(""); });
    send({ answer: { seen } });
  } }, make("strong", {}, "All as shown"), make("small", {}, "tap a lamp first where it differs"));
  return [rows, enter, choose];
}

function lampRow(module, word, marks, paint) {
  const row = make("div", { class: "lamp-row", role: "group", "aria-label": `${word.label}, reads ${marks.join(" ")}` },
    make("span", { class: "word" }, word.label));
  const line = make("div", { class: "lamp-line" });
  word.members.forEach((label, i) => {
    const lamp = module.lamps.find((l) => l.label === label);
    line.append(make("button", {
      type: "button", class: "lamp-button", "data-lamp": label, "data-mark": marks[i],
      "aria-label": `${lamp ? lamp.title || label : label}: ${lampWord(marks[i])}; tap to change`,
      onclick: () => {
        marks[i] = MARKS[(MARKS.indexOf(marks[i]) + 1) % MARKS.length];
        paint();
        document.querySelector(`[data-lamp="${CSS.escape(label)}"]`).focus();
      },
    }, lampShape(marks[i]), make("span", {}, label), make("small", {}, lampWord(marks[i]))));
  });
  row.append(line);
  return row;
}

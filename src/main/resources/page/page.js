// Holds what the server last said, shows it, and sends what a person taps.

import { make, chip, closeUp, oddsBar } from "/drawing.js";
import { answers } from "/answers.js";

const at = (id) => document.getElementById(id);
let module;
let view;
let lamps = {};
let stepKey = "";
let notchLeft = remembered("notch") === "left";
let chosen = 0;
/** Controls that the step asks for and that the hand has done; the answer writes them down. */
let ticked = new Set();
let asking = false;

/** Kept by this browser only: how the board lies. */
function remembered(key) {
  try { return localStorage.getItem(key); } catch { return null; }
}
function remember(key, value) {
  try { localStorage.setItem(key, value); } catch { /* Not kept, then. */ }
}

async function send(line) {
  if (asking) {
    return;
  }
  asking = true;
  document.body.classList.add("asking");
  try {
    const reply = await fetch("/dialogue", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(line),
    });
    if (!reply.ok) {
      trouble(await reply.text());
      return;
    }
    const said = await reply.json();
    trouble(said.error || "");
    show(said.view);
    if (!said.error && line.words !== undefined) {
      at("own").value = "";
    }
    return said;
  } catch {
    trouble("The program does not answer. What was entered before is in the journal.");
  } finally {
    asking = false;
    document.body.classList.remove("asking");
  }
}

function trouble(text) {
  at("trouble").textContent = text;
}

function percent(probability) {
  if (probability > 0 && probability < 0.005) {
    return "<1 %";
  }
  return probability < 1 && probability > 0.995 ? ">99 %" : Math.round(100 * probability) + " %";
}

function show(next) {
  if (view && next.version < view.version) {
    return;
  }
  view = next;
  const key = view.version + "";
  if (key !== stepKey) {
    at("levels").replaceChildren();
    lamps = {};
    ticked = new Set();
    stepKey = key;
    chosen = 0;
  }
  render();
}

function render() {
  document.body.dataset.stage = view.state.stage;
  document.body.dataset.version = view.version;
  at("standing").textContent = standing();
  showAdvice();
  showTask();
  showRanking();
  showPanel();
  showChips();
  showHistory();
  showStop();
  at("undo").disabled = !view.log.some((e) => e.stands && !e.withdraws);
  at("finish").hidden = !(view.state["may-finish"] || view.state.stage === "confirmed") || view.state.stage === "closed";
}

const STAGES = {
  exercising: "Working through the exercise: nothing differs so far.",
  searching: "Something differs: looking for it.",
  repairing: "Found: repair it.",
  confirming: "Repaired: showing that it works.",
  confirmed: "All works as it should.",
  closed: "Finished: the finding is written.",
};

const VERDICTS = {
  open: "Undecided",
  named: "Beyond doubt",
  "nothing-wrong": "Nothing is wrong, beyond doubt",
  inseparable: "No step at hand tells these apart",
};

function standing() {
  return STAGES[view.state.stage] || view.state.stage;
}

function showAdvice() {
  const lines = [];
  for (const c of view.state.cautions) {
    lines.push(make("p", { class: c.urgent ? "caution urgent" : "caution" }, make("strong", {}, c.urgent ? "Stop. " : "Care. "), c.text));
  }
  for (const n of view.state.normal) {
    lines.push(make("p", { class: "normal" }, make("strong", {}, "Normal. "), n.text));
  }
  for (const text of view.state.contradictions) {
    lines.push(make("p", { class: "again" }, make("strong", {}, "Look again. "), text));
  }
  at("advice").replaceChildren(...lines);
}

function showTask() {
  const { state, step } = view;
  const task = [];
  at("step-head").textContent = { repairing: "Repair", confirmed: "Done", closed: "Closed" }[state.stage] || "Next";
  if (state.next && step && state.next.purpose === "caution") {
    at("step-head").textContent = "Stop";
    task.push(make("p", { class: "caution urgent" }, state.next.caution.text), ...asked(state.next, step));
    task.push(make("button", { type: "button", class: "answer second", onclick: () => send({ command: "accept" }) },
      make("strong", {}, "I accept it"), make("small", {}, "go on at my own risk")));
  } else if (state.stage === "closed") {
    task.push(make("p", { class: "reading" }, view.log.filter((e) => e.stands).at(-1).words));
  } else if (state.stage === "repairing") {
    task.push(...repair(state.suspects[0]));
  } else if (state.stage === "confirmed") {
    task.push(make("p", { class: "reading" }, "The exercise shows all as it should be. Finish writes the finding."));
  } else if (state.next && step) {
    task.push(...asked(state.next, step));
  } else {
    task.push(make("p", { class: "reading" }, "No step is left to take."));
  }
  at("task").replaceChildren(...task);
}

function asked(next, step) {
  const lines = [];
  if (step.handling.length) {
    lines.push(make("ol", { class: "handling" }, ...step.handling.map((h) => make("li", {}, h))));
  }
  lines.push(make("p", { class: "reading" }, capital(step.reading)));
  lines.push(make("p", { class: "why" }, `About ${Math.round(next.seconds)} s; ${next.why}.` +
    (step.after.length ? " Then " + step.after.join(", ") + "." : "")));
  const all = marks();
  const touched = module.parts.filter((p) => p.pins.some((pin) => (all[`${p.label}.${pin.number}`] || {}).touch));
  if (touched.length) {
    lines.push(make("div", { class: "in-step" }, ...touched.slice(0, 2).map((part) =>
      chip(part, { left: notchLeft, marks: all, onpin, beside: true }))));
  }
  lines.push(answers(module, next, step.how, lamps, send));
  return lines;
}

function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function repair(first) {
  const cures = new Map();
  first.faults.forEach((f, i) => { if (!cures.has(f.repair)) { cures.set(f.repair, i + 1); } });
  const lines = [];
  for (const [cure, fault] of cures) {
    lines.push(make("p", { class: "reading" }, cure));
    const ends = view.places[first.faults[fault - 1].id] || [];
    if (ends.length === 2) {
      lines.push(closeUp(module, ends));
    }
    lines.push(make("div", { class: "answers" }, make("button", {
      type: "button", class: "answer", onclick: () => send({ command: "repaired", fault }),
    }, make("strong", {}, "Repaired"), make("small", {}, "the power was off for it"))));
  }
  return lines;
}

function showRanking() {
  const shown = view.state.suspects.filter((s, i) => i < 6 && (i === 0 || s.probability >= 0.01));
  at("suspects-head").textContent = "Suspects: " + (VERDICTS[view.state.verdict] || view.state.verdict).toLowerCase();
  at("ranking").replaceChildren(...shown.map(suspect));
  const rest = view.state.suspects.length - shown.length + view.state["suspects-left-out"];
  const sum = shown.reduce((a, s) => a + s.probability, 0);
  at("others").textContent = rest > 0 ? `${percent(Math.max(0, 1 - sum))} in ${rest} others` : "";
}

function suspect(s) {
  const marked = s.rank - 1 === chosen;
  const faults = s.faults.slice(0, 4).map((f, i) => make("p", { class: "fault" }, (i ? "or: " : "") + f.words + "."));
  const more = s.faults.length - 4 + s["faults-left-out"];
  if (more > 0) {
    faults.push(make("p", { class: "fault" }, `or one of ${more} more that look the same or have the same cure.`));
  }
  const reasons = make("details", { class: "reasons" }, make("summary", {}, "Why"),
    make("p", {}, `${s.faults[0].reason} (rule ${s.faults[0].rule})`),
    ...s.for.map((g) => ground("for it", g)), ...s.against.map((g) => ground("not explained by it", g)));
  return make("li", { class: marked ? "suspect marked" : "suspect" },
    make("div", { class: "odds" },
      make("button", { type: "button", class: "rank", "aria-pressed": String(marked), "aria-label": `mark suspect ${s.rank} in the drawing`,
        onclick: () => { chosen = s.rank - 1; render(); } }, String(s.rank)),
      make("strong", {}, percent(s.probability)),
      oddsBar(s.probability)),
    make("div", { class: "what" }, ...faults, reasons));
}

function ground(word, g) {
  const entry = view.log.find((e) => e.n === g.entry);
  const factor = Math.exp(Math.abs(g["log-factor"]));
  const times = factor >= 1000 ? "over 1000" : factor.toFixed(1);
  return make("p", {}, `${word}: entry ${g.entry} (${entry ? entry.words : ""}), ${times} times ` +
    (g["log-factor"] > 0 ? "likelier" : "less likely") + " than otherwise");
}

/** Controls as they stand; a tap moves one and writes it down. */
function showPanel() {
  const levels = {};
  for (const [key, value] of Object.entries(view.state.controls)) {
    const word = module["control-words"].find((w) => w.label === key);
    if (word) {
      word.members.forEach((m, i) => { levels[m] = value[i] === "1"; });
    } else {
      levels[key] = value === "high" || value === "1";
    }
  }
  const goal = wantedLevels();
  const on = view.state.power === "on";
  const turn = goal.power !== undefined && (goal.power === "on") !== on;
  const turned = ticked.has("power");
  const groups = [make("div", { class: "control-group" },
    make("button", { type: "button", class: "control" + (turn ? " wanted" : "") + (turned ? " done" : ""), "aria-pressed": String(on), "data-control": "power",
      "aria-label": `power ${on ? "on" : "off"}${turn ? ", the step asks for " + goal.power : ""}${turned ? ", done" : ""}`,
      onclick: () => (turn ? tick("power") : send({ entry: { power: on ? "off" : "on" } })) },
    make("strong", {}, "power"), make("small", {}, turned ? "done ✓" : turn ? "to " + goal.power : on ? "on" : "off")))];
  const grouped = new Set();
  for (const word of module["control-words"]) {
    const group = make("div", { class: "control-group", role: "group", "aria-label": word.label }, make("span", { class: "word" }, word.label));
    word.members.forEach((m) => { grouped.add(m); group.append(control(m, levels, goal)); });
    groups.push(group);
  }
  const single = make("div", { class: "control-group" });
  module.controls.filter((c) => !grouped.has(c.label)).forEach((c) => single.append(control(c.label, levels, goal)));
  if (single.children.length) {
    groups.push(single);
  }
  at("panel").replaceChildren(...groups);
}

/** Where the step wants each control, to mark those to move. */
function wantedLevels() {
  const goal = {};
  for (const move of view.step ? view.step.moves : []) {
    for (const [key, value] of Object.entries(move.set || {})) {
      const word = module["control-words"].find((w) => w.label === key);
      if (word) {
        word.members.forEach((m, i) => { goal[m] = value[i] === "1"; });
      } else {
        goal[key] = value === "high" || value === "1";
      }
    }
    if (move.power) {
      goal.power = move.power;
    }
    if (move.press) {
      goal[move.press] = "press";
    }
    if (move.hold) {
      goal[move.hold] = "hold";
    }
  }
  return goal;
}

/** What the step asks for is ticked off here: the answer writes it down, once. */
function tick(label) {
  if (!ticked.delete(label)) {
    ticked.add(label);
  }
  showPanel();
  document.querySelector(`[data-control="${CSS.escape(label)}"]`).focus();
}

function control(label, levels, goal) {
  const c = module.controls.find((x) => x.label === label);
  const done = ticked.has(label);
  if (c.button) {
    const held = view.state.held.includes(label);
    return make("button", { type: "button", class: "control push" + (goal[label] ? " wanted" : "") + (done ? " done" : ""), "data-control": label,
      "aria-label": `${c.title || label}: button${held ? ", held" : ""}${goal[label] ? ", the step asks to " + goal[label] + " it" : ""}${done ? ", done" : ""}`,
      onclick: () => (goal[label] ? tick(label) : send({ entry: held ? { release: label } : { press: label } })) },
    make("strong", {}, label), make("small", {}, done ? "done ✓" : goal[label] || (held ? "let go" : "press")));
  }
  const high = levels[label];
  const move = goal[label] !== undefined && goal[label] !== high;
  return make("button", { type: "button", class: "control flip" + (high ? " high" : "") + (move ? " wanted" : "") + (done ? " done" : ""), "data-control": label,
    role: "switch", "aria-checked": String(Boolean(high)), title: c.title,
    "aria-label": `${c.title || label}: ${high ? "high" : "low"}${move ? ", the step asks for " + (high ? "low" : "high") : ""}${done ? ", done" : ""}`,
    onclick: () => (move ? tick(label) : send({ entry: { set: { [label]: high ? "low" : "high" } } })) },
  make("span", { class: "lever", "aria-hidden": "true" }), make("strong", {}, label),
  make("small", {}, done ? "done ✓" : move ? "to " + (high ? "low" : "high") : high ? "high" : "low"));
}

function marks() {
  const marks = {};
  const at = (end) => (marks[end] = marks[end] || {});
  const s = view.state.suspects[chosen];
  if (s && view.state.verdict !== "nothing-wrong") {
    for (const f of s.faults.slice(0, 4)) {
      const ends = view.places[f.id] || [];
      if (ends.length <= 4) {
        ends.forEach((end) => { at(end).ranks = [s.rank]; });
      }
    }
  }
  const read = view.state.next && view.state.stage !== "repairing" ? view.state.next.read : {};
  for (const point of [read.measured, read.probed, read.continuity].flat().filter(Boolean)) {
    at(point.replace("/row", "")).touch = true;
  }
  const looked = (read.inspected || "").match(/[A-Za-z0-9_/]+\.\d+/g) || [];
  looked.forEach((end) => { at(end).touch = true; });
  return marks;
}

function showChips() {
  const all = marks();
  const focused = document.activeElement && document.activeElement.dataset ? document.activeElement.dataset.end : "";
  at("chips").classList.toggle("lying", notchLeft);
  at("chips").replaceChildren(...module.parts.map((part) => chip(part, { left: notchLeft, marks: all, onpin })));
  at("notch-up").setAttribute("aria-pressed", String(!notchLeft));
  at("notch-left").setAttribute("aria-pressed", String(notchLeft));
  if (focused) {
    const again = document.querySelector(`[data-end="${CSS.escape(focused)}"]`);
    if (again) {
      again.focus();
    }
  }
}

function onpin(part, pin) {
  const net = module.nets.find((n) => n.label === pin.net);
  at("pin").textContent = `${part.label} pin ${pin.number} (${pin.name}): ` +
    (net ? `line ${net.label}, joins ${net.ends.join(", ")}` : "not wired");
}

/** What every pin should show as the controls stand, for a walk with the meter. */
async function showLevels() {
  const said = await send({ command: "levels" });
  if (!said || !said.levels) {
    return;
  }
  at("levels").replaceChildren(...Object.entries(said.levels).map(([label, pins]) =>
    make("table", {}, make("caption", {}, label),
      make("thead", {}, make("tr", {}, ...["pin", "name", "level", "volts"].map((h) => make("th", { scope: "col" }, h)))),
      make("tbody", {}, ...pins.map((p) => make("tr", {}, ...[p.pin, p.name, p.level, p.volts].map((v) => make("td", {}, String(v)))))))));
  at("levels").focus();
}

function showHistory() {
  at("entries").replaceChildren(...[...view.log].reverse().map((e) =>
    make("li", { value: e.n, class: e.stands || e.withdraws ? "" : "withdrawn" }, e.words, ...(e.stands || e.withdraws ? [] : [make("small", {}, " taken back")]))));
}

/** An urgent caution covers the page until the power is off or it is accepted; its look is then the step. */
function showStop() {
  const dialog = at("stop");
  const step = view.state.next;
  if (!step || step.purpose !== "caution" || view.state.power !== "on") {
    if (dialog.open) {
      dialog.close();
    }
    return;
  }
  at("stop-text").replaceChildren(make("p", {}, step.caution.text), make("p", {}, `Then: ${step.words}.`));
  at("stop-answers").replaceChildren(
    make("button", { type: "button", class: "answer", onclick: () => send({ entry: { power: "off" } }) },
      make("strong", {}, "Power is off"), make("small", {}, "writes it down")),
    make("button", { type: "button", class: "answer second", onclick: () => send({ command: "accept" }) },
      make("strong", {}, "I accept it"), make("small", {}, "go on at my own risk")));
  if (!dialog.open) {
    dialog.showModal();
  }
}

function turn(left) {
  notchLeft = left;
  remember("notch", left ? "left" : "up");
  showTask();
  showChips();
}

function listen() {
  const updates = new EventSource("/updates");
  updates.addEventListener("message", (e) => {
    lost(false);
    show(JSON.parse(e.data));
  });
  updates.addEventListener("error", () => {
    lost(true);
    if (updates.readyState === EventSource.CLOSED) {
      updates.close();
    }
  });
}

function lost(is) {
  at("line").hidden = !is;
  at("line").textContent = is ? "The program does not answer. If it was started anew, open the address it printed." : "";
}

async function start() {
  const [drawn, stands] = await Promise.all([fetch("/module"), fetch("/view")]);
  module = await drawn.json();
  document.title = module.title + " - Straywire";
  at("title").textContent = module.title;
  show(await stands.json());
  at("undo").addEventListener("click", () => send({ command: "undo" }));
  at("finish").addEventListener("click", () => send({ command: "finish" }));
  at("show-levels").addEventListener("click", showLevels);
  at("notch-up").addEventListener("click", () => turn(false));
  at("notch-left").addEventListener("click", () => turn(true));
  at("stop").addEventListener("cancel", (e) => e.preventDefault());
  at("say").addEventListener("submit", (e) => {
    e.preventDefault();
    send({ words: at("own").value });
  });
  listen();
}

start();

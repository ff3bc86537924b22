// Where the gas goes: one bar, its parts in the order of a start, and what is thrown away at its end.

import { alike, percent, quantity } from "../figures.js";
import { el, figure, svg } from "./parts.js";

const PARTS = [
  { key: "arc", name: "While the arc burns", group: "welding", fill: "welding" },
  { key: "backPurge", name: "Back purge", group: "welding", fill: "purge" },
  { key: "preFlow", name: "Before the arc", group: "shielding", fill: "before" },
  { key: "postFlow", name: "After the arc", group: "shielding", fill: "after" },
  { key: "startSurge", name: "Start surge", group: "wasted", fill: "surge" },
  { key: "leak", name: "Leaks", group: "wasted", fill: "leak" },
];

let made = 0;

/**
 * @param element where it goes; what was in it goes away
 * @param answer a frame's estimate
 * @param options { of: "forQuantity" (left out) or "perFrame" }
 */
export function draw(element, answer, options = {}) {
  const gas = answer?.[options.of ?? "forQuantity"]?.gas;
  if (!gas || !(gas.total.value > 0)) {
    element.replaceChildren();
    return;
  }
  const mine = `gas-${++made}`;
  const parts = PARTS.filter(({ key }) => gas[key].value > 0).map((part) => ({
    ...part,
    value: gas[part.key].value,
    share: gas[part.key].value / gas.total.value,
  }));
  const wasted = parts.filter((part) => part.group === "wasted").reduce((sum, part) => sum + part.value, 0);
  const whose = options.of === "perFrame" ? "a frame" : answer.quantity === 1 ? "the frame" : "the order";
  element.replaceChildren(
    figure(
      "Where the gas goes",
      `${quantity(gas.total)} for ${whose}; start surge and leaks throw away ${percent(wasted / gas.total.value)} of it`,
      bar(parts, mine),
      table(parts, gas, mine),
    ),
  );
}

function bar(parts, mine) {
  let at = 0;
  return svg(
    "svg",
    { class: "bar-of-parts", width: "100%", height: 34, "aria-hidden": "true", focusable: "false" },
    patterns(mine),
    parts.map((part) => {
      const x = at;
      at += part.share * 100;
      return [
        svg("rect", { x: `${x}%`, y: 0, width: `${part.share * 100}%`, height: 34, class: `part ${part.fill}` }),
        svg("rect", { x: `${x}%`, y: 0, width: `${part.share * 100}%`, height: 34, fill: `url(#${mine}-${part.fill})`, class: "part edge" }),
      ];
    }),
  );
}

/** Parts that stand side by side are told apart by their hatching too. */
function patterns(mine) {
  const pattern = (fill, size, turn, ...drawn) =>
    svg(
      "pattern",
      { id: `${mine}-${fill}`, width: size, height: size, patternUnits: "userSpaceOnUse", patternTransform: turn ? `rotate(${turn})` : null },
      ...drawn,
    );
  const line = (x) => svg("line", { x1: x, y1: 0, x2: x, y2: 12, class: "hatch" });
  const dot = (x) => svg("circle", { cx: x, cy: x, r: 1.2, class: "hatch-dot" });
  return svg(
    "defs",
    {},
    pattern("welding", 12, 0),
    pattern("purge", 8, 0, dot(4)),
    pattern("before", 8, 45, line(1)),
    pattern("after", 8, -45, line(1)),
    pattern("surge", 6, 0, line(1), svg("line", { x1: 0, y1: 1, x2: 12, y2: 1, class: "hatch" })),
    pattern("leak", 5, 0, dot(2.5)),
  );
}

function table(parts, gas, mine) {
  const told = alike([gas.total]);
  return el(
    "table",
    { class: "legend" },
    el(
      "thead",
      { class: "unseen" },
      el("tr", {}, ...["Part", "Gas", "Share"].map((name) => el("th", { scope: "col" }, name))),
    ),
    el(
      "tbody",
      {},
      parts.map((part) =>
        el(
          "tr",
          { class: part.group === "wasted" ? "wasted" : null },
          el("th", { scope: "row" }, swatch(part.fill, mine), part.name),
          el("td", {}, told(gas[part.key])),
          el("td", {}, percent(part.share)),
        ),
      ),
    ),
  );
}

function swatch(fill, mine) {
  return svg(
    "svg",
    { class: "swatch", width: 22, height: 14, "aria-hidden": "true", focusable: "false" },
    svg("rect", { width: 22, height: 14, class: `part ${fill}` }),
    svg("rect", { width: 22, height: 14, fill: `url(#${mine}-${fill})`, class: "part edge" }),
  );
}

// Curves over each other: lines told apart by dash and colour, read off with the arrow keys as well as with a pointer.

import uPlot from "/webjars/uplot/dist/uPlot.esm.js";
import { el, figure, whenWide } from "./parts.js";

/** One for each of five curves; the first is a whole line. */
const DASHES = [[], [9, 5], [2, 4], [12, 4, 2, 4], [5, 3]];

// the library's own style sheet, where curves are drawn at all
document.head.append(el("link", { rel: "stylesheet", href: "/webjars/uplot/dist/uPlot.min.css" }));

const colour = (element, name) => getComputedStyle(element).getPropertyValue(name).trim();

/**
 * @param element where it goes; what was in it goes away
 * @param picture { caption, note, x: { name, values, show }, y: { name, show }, curves: [{ name, values, place, level }] };
 *     a curve's place says which dash and colour it has, its own in the list where left out; a level is no curve, but what
 *     curves are held against
 * @param table what the picture tells, as an element
 */
export function drawCurves(element, picture, table) {
  const drawing = el("div", {
    class: "curves",
    tabindex: 0,
    role: "img",
    "aria-label": `${picture.caption}. ${picture.note}. The table below has the figures; arrow keys read along the curves.`,
  });
  const told = el("p", { class: "told", role: "status" });
  const keys = el("ul", { class: "keys-of-curves" }, picture.curves.map((curve, i) => el("li", {}, key(curve, i), curve.name)));
  element.replaceChildren(figure(picture.caption, picture.note, keys, drawing, told, table));
  let plot = null;
  const paint = (width) => {
    plot?.destroy();
    plot = new uPlot(settings(element, picture, width, (i) => tell(told, picture, i)), [picture.x.values, ...picture.curves.map((curve) => curve.values)], drawing);
  };
  whenWide(drawing, paint);
  const scheme = matchMedia("(prefers-color-scheme: dark)");
  const repaint = () => {
    if (drawing.isConnected) paint(drawing.clientWidth);
    else scheme.removeEventListener("change", repaint);
  };
  scheme.addEventListener("change", repaint);
  drawing.addEventListener("keydown", (event) => {
    const step = { ArrowRight: 1, ArrowLeft: -1, Home: -Infinity, End: Infinity }[event.key];
    if (!step || !plot) return;
    event.preventDefault();
    const last = picture.x.values.length - 1;
    const i = Math.min(last, Math.max(0, (plot.cursor.idx ?? (step > 0 ? -1 : last + 1)) + step));
    plot.setCursor({ left: plot.valToPos(picture.x.values[i], "x"), top: 0 });
    tell(told, picture, i);
  });
}

function tell(told, picture, i) {
  told.textContent =
    i === null || i === undefined
      ? ""
      : `${picture.x.show(picture.x.values[i])}: ${picture.curves
          .filter((curve) => !curve.level)
          .map((curve) => `${curve.name} ${picture.y.show(curve.values[i])}`)
          .join("; ")}`;
}

const place = (curve, i) => curve.place ?? i;

const dash = (curve, i) => (curve.level ? [1, 3] : DASHES[place(curve, i)]);

function key(curve, i) {
  const svg = (name, attributes) => {
    const made = document.createElementNS("http://www.w3.org/2000/svg", name);
    Object.entries(attributes).forEach(([attribute, value]) => made.setAttribute(attribute, value));
    return made;
  };
  const swatch = svg("svg", { width: 34, height: 10, "aria-hidden": "true", focusable: "false" });
  swatch.append(svg("line", { x1: 1, x2: 33, y1: 5, y2: 5, class: curve.level ? "level" : `curve-${place(curve, i) + 1}`, "stroke-dasharray": dash(curve, i).join(" ") }));
  return swatch;
}

function settings(element, picture, width, told) {
  const ink = colour(element, "--ink");
  const soft = colour(element, "--soft");
  const grid = { stroke: colour(element, "--line"), width: 1 };
  const font = "12px system-ui, sans-serif";
  const axis = { stroke: soft, grid, ticks: grid, font, labelFont: font };
  return {
    width,
    height: Math.round(Math.min(340, Math.max(220, width * 0.5))),
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { size: 7 } },
    scales: { x: { time: false }, y: { range: picture.y.range } },
    axes: [
      { ...axis, label: picture.x.name },
      { ...axis, label: picture.y.name, size: 58 },
    ],
    series: [
      {},
      ...picture.curves.map((curve, i) => ({
        label: curve.name,
        stroke: curve.level ? ink : colour(element, `--steel-${place(curve, i) + 1}`),
        width: curve.level ? 1.5 : 2,
        dash: dash(curve, i),
        points: { show: false },
      })),
    ],
    hooks: { setCursor: [(plot) => told(plot.cursor.idx)] },
  };
}

// A seam unrolled: the dihedral angle and the section of the deposit along the way, with a place on it to read.

import { number, quantity, unit } from "../figures.js";
import { el, figure, svg, ticks, whenWide } from "./parts.js";

const ANGLES = { height: 132, top: 12 };
const SECTIONS = { height: 84, top: 12 };
const LEFT = 44;
const RIGHT = 12;
const FOOT = 34;

/** Where a fillet ends and a groove begins, and where a root is hard to reach, deg. */
const WIDEST_FILLET = 135;
const NARROWEST_FILLET = 60;

/**
 * @param element where it goes; what was in it goes away
 * @param deposit an answer of /v1/deposits?course=true
 */
export function draw(element, deposit) {
  const course = deposit?.course;
  if (!course) {
    element.replaceChildren();
    return;
  }
  const at = Math.min(Number(element.querySelector("input")?.value ?? 0), course.length - 1);
  const drawing = el("div", { class: "drawing" });
  const told = el("output", { class: "told" });
  const slider = el("input", { type: "range", min: 0, max: course.length - 1, step: 1, value: at });
  const reader = el("label", { class: "reader" }, el("span", {}, "Place along the seam"), slider);
  element.replaceChildren(figure("The seam unrolled", summary(deposit), drawing, reader, told));
  let marker = null;
  const tell = () => {
    const place = course[Number(slider.value)];
    const words = `${quantity(place.along)} along: ${number(place.dihedralAngle.value)}°, section ${quantity(place.section)}${kind(place.dihedralAngle.value)}`;
    told.textContent = words;
    slider.setAttribute("aria-valuetext", words);
    marker?.(Number(slider.value));
  };
  slider.addEventListener("input", tell);
  whenWide(drawing, (width) => {
    // while the page is laid out it may be narrower than the margins for a moment
    if (width <= LEFT + RIGHT) return;
    const picture = new Unrolled(deposit, width);
    drawing.replaceChildren(picture.svg);
    marker = (i) => picture.mark(i);
    picture.svg.addEventListener("pointermove", (event) => {
      slider.value = picture.nearest(event.offsetX);
      tell();
    });
    tell();
  });
  tell();
}

function kind(angle) {
  if (angle > WIDEST_FILLET) return ", a groove";
  return angle < NARROWEST_FILLET ? ", narrower than 60°: the root may not be reached" : "";
}

function summary({ course, seam }) {
  const angles = [seam.dihedralAngle.least.value, seam.dihedralAngle.greatest.value];
  const sections = course.map((place) => place.section.value);
  const run = (values, sign) => {
    const [least, greatest] = [Math.min(...values), Math.max(...values)].map((value) => number(value));
    return least === greatest ? `${least}${sign} all along` : `${least} to ${greatest}${sign}`;
  };
  const last = course[course.length - 1];
  const section = run(sections, `\u00a0${unit(last.section.unit)}`);
  const mean = section.endsWith("all along") ? "" : `, ${quantity(seam.meanSection)} on the mean`;
  return `${quantity(last.along)} long, dihedral angle ${run(angles, "°")}, section ${section}${mean}`;
}

class Unrolled {
  svg;
  #course;
  #width;
  #length;
  #greatest;
  #mean;
  #cursor;
  #onAngles;
  #onSections;

  constructor({ course, seam }, width) {
    this.#course = course;
    this.#mean = seam.meanSection.value;
    this.#width = width - LEFT - RIGHT;
    this.#length = course[course.length - 1].along.value;
    this.#greatest = Math.max(...course.map((place) => place.section.value)) * 1.1;
    const below = ANGLES.top + ANGLES.height;
    const bottom = below + SECTIONS.top + SECTIONS.height;
    this.#cursor = svg("line", { class: "cursor", y1: ANGLES.top, y2: bottom });
    this.#onAngles = svg("circle", { class: "at angle-at", r: 4 });
    this.#onSections = svg("circle", { class: "at section-at", r: 4 });
    this.svg = svg(
      "svg",
      { class: "unrolled", width, height: bottom + FOOT, "aria-hidden": "true", focusable: "false" },
      this.#angles(),
      this.#sections(bottom),
      this.#foot(bottom),
      this.#cursor,
      this.#onAngles,
      this.#onSections,
    );
  }

  #x(along) {
    return LEFT + (along / this.#length) * this.#width;
  }

  #angleY(angle) {
    return ANGLES.top + ANGLES.height * (1 - angle / 180);
  }

  #sectionY(section) {
    return ANGLES.top + ANGLES.height + SECTIONS.top + SECTIONS.height * (1 - section / this.#greatest);
  }

  #line(y) {
    return this.#course.map((place) => `${this.#x(place.along.value).toFixed(1)},${y(place).toFixed(1)}`).join(" ");
  }

  #angles() {
    const right = LEFT + this.#width;
    const band = (from, to, name) => svg("rect", { class: `band ${name}`, x: LEFT, y: this.#angleY(to), width: this.#width, height: this.#angleY(from) - this.#angleY(to) });
    const level = (angle) => [
      svg("line", { class: "grid", x1: LEFT, x2: right, y1: this.#angleY(angle), y2: this.#angleY(angle) }),
      svg("text", { class: "tick", x: LEFT - 6, y: this.#angleY(angle) + 4, "text-anchor": "end" }, `${angle}°`),
    ];
    return [
      band(WIDEST_FILLET, 180, "groove"),
      band(0, NARROWEST_FILLET, "narrow"),
      [0, NARROWEST_FILLET, 90, WIDEST_FILLET, 180].map(level),
      svg("text", { class: "note", x: right - 4, y: this.#angleY(180) + 13, "text-anchor": "end" }, "groove"),
      svg("text", { class: "note", x: right - 4, y: this.#angleY(0) - 5, "text-anchor": "end" }, "root hard to reach"),
      svg("polyline", { class: "angle", points: this.#line((place) => this.#angleY(place.dihedralAngle.value)) }),
      svg("text", { class: "name angle-name", x: LEFT + 5, y: this.#angleY(0) - 5 }, "dihedral angle"),
    ];
  }

  #sections(bottom) {
    const steps = ticks(this.#greatest, 3);
    return [
      steps.map((step) => [
        svg("line", { class: "grid", x1: LEFT, x2: LEFT + this.#width, y1: this.#sectionY(step), y2: this.#sectionY(step) }),
        svg("text", { class: "tick", x: LEFT - 6, y: this.#sectionY(step) + 4, "text-anchor": "end" }, number(step)),
      ]),
      svg("polygon", {
        class: "section",
        points: `${LEFT},${bottom} ${this.#line((place) => this.#sectionY(place.section.value))} ${LEFT + this.#width},${bottom}`,
      }),
      svg("polyline", { class: "section-edge", points: this.#line((place) => this.#sectionY(place.section.value)) }),
      svg("line", { class: "mean", x1: LEFT, x2: LEFT + this.#width, y1: this.#sectionY(this.#mean), y2: this.#sectionY(this.#mean) }),
      svg("text", { class: "note", x: LEFT + this.#width - 4, y: this.#sectionY(this.#mean) + 13, "text-anchor": "end" }, "mean"),
      svg("text", { class: "name", x: LEFT + 5, y: bottom - 5 }, `section, ${unit(this.#course[0].section.unit)}`),
    ];
  }

  #foot(bottom) {
    return [
      ticks(this.#length, Math.max(2, this.#width / 90)).map((step) =>
        svg("text", { class: "tick", x: this.#x(step), y: bottom + 15, "text-anchor": "middle" }, number(step)),
      ),
      svg(
        "text",
        { class: "tick", x: LEFT + this.#width, y: bottom + 29, "text-anchor": "end" },
        `along the seam, ${unit(this.#course[0].along.unit)}`,
      ),
    ];
  }

  mark(i) {
    const place = this.#course[i];
    const x = this.#x(place.along.value);
    this.#cursor.setAttribute("x1", x);
    this.#cursor.setAttribute("x2", x);
    for (const [dot, y] of [[this.#onAngles, this.#angleY(place.dihedralAngle.value)], [this.#onSections, this.#sectionY(place.section.value)]]) {
      dot.setAttribute("cx", x);
      dot.setAttribute("cy", y);
    }
  }

  nearest(x) {
    const along = ((x - LEFT) / this.#width) * this.#length;
    let best = 0;
    this.#course.forEach((place, i) => {
      if (Math.abs(place.along.value - along) < Math.abs(this.#course[best].along.value - along)) best = i;
    });
    return best;
  }
}

// What was refused, as a list beside the joints; each line leads to its field.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { jointFields, label } from "./rules.js";

const JOINT = /^frame\.joints\[(\d+)\](?:\.(.+))?$/;

/** The same of a frame in a job file, where a joint stands by its number. */
export function whereInFile(path) {
  const joint = path.match(JOINT);
  return joint ? `joint ${Number(joint[1]) + 1}, ${label(joint[2] ?? "kind")}` : label(path.replace(/^frame\./, ""));
}

/** In words, which field a path of a request names. @param rows which row each joint that was sent stands in */
export function where(path, rows) {
  const joint = path.match(JOINT);
  return joint ? `row ${rows[Number(joint[1])] + 1}, ${label(joint[2] ?? "kind")}` : label(path.replace(/^frame\./, ""));
}

export class ToMend {
  #element;
  #go;
  #notice = "";
  #lines = [];

  constructor(element, go) {
    this.#element = element;
    this.#go = go;
  }

  /** Says something once, until the next thing is said. */
  notice(text) {
    this.#notice = text;
    this.#draw();
  }

  /**
   * @param rows which row each joint that was sent stands in
   * @param inEdit the cell being written in, of which nothing is said yet
   * @return messages by cell ("row|field") and by path, and how many
   */
  show(problem, rows, inEdit) {
    const cells = new Map();
    const paths = new Map();
    this.#lines = [];
    const violations = problem === null ? [] : problem.violations;
    for (const violation of violations) {
      const place = this.#place(violation.path, rows);
      if (inEdit && place.row === inEdit.row && place.field === inEdit.field) continue;
      add(paths, violation.path, violation.message);
      if (place.row !== undefined) {
        for (const field of place.fields) add(cells, `${place.row}|${field}`, violation.message);
      }
      this.#lines.push({ place, text: violation.message, where: place.where });
    }
    if (problem && violations.length === 0) this.#lines.push({ place: null, text: problem.message, where: "" });
    this.#draw();
    return { cells, paths, count: Math.max(violations.length, problem ? 1 : 0) };
  }

  #place(path, rows) {
    const joint = path.match(JOINT);
    if (!joint) return { path, where: where(path, rows) };
    const row = rows[Number(joint[1])];
    const named = joint[2] ?? "kind";
    // a part that is missing as a whole is missing in each of its columns
    const fields = jointFields.has(named)
      ? [named]
      : [...jointFields.keys()].filter((field) => field.startsWith(named + ".") && jointFields.get(field).needed);
    const first = fields[0] ?? named;
    return { row, field: first, fields: fields.length > 0 ? fields : [named], where: where(path, rows) };
  }

  #draw() {
    const shown = this.#lines.slice(0, 30);
    render(
      html`${this.#notice ? html`<p class="notice" role="status">${this.#notice}</p>` : nothing}
      ${shown.length > 0
        ? html`<h3>To mend</h3>
            <ul>
              ${shown.map(
                (line) => html`<li>${line.place ? html`<button type="button" class="link" @click=${() => this.#go(line.place)}>${line.where}</button>: ` : nothing}${line.text}</li>`,
              )}
              ${this.#lines.length > shown.length ? html`<li>and ${this.#lines.length - shown.length} more</li>` : nothing}
            </ul>`
        : nothing}`,
      this.#element,
    );
  }
}

function add(map, key, text) {
  if (map.has(key)) map.get(key).push(text);
  else map.set(key, [text]);
}

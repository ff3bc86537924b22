// Lines of the shop's own in a price: a quantity at a rate, or a sum.

import { button, Form } from "./fields.js";
import { otherWorkFields } from "./rules.js";

export class OtherWork {
  #job;
  #changed;
  #lines;
  #forms = [];

  constructor(element, job, changed) {
    this.#job = job;
    this.#changed = changed;
    const title = document.createElement("h3");
    title.textContent = "Other work on the order";
    this.#lines = document.createElement("div");
    this.#lines.className = "other-work";
    const add = button("Add a line", () => {
      this.#job.otherWork.push(new Map());
      this.#draw();
      this.#lines.lastElementChild?.querySelector("input")?.focus();
    });
    element.append(title, this.#lines, add);
    this.#draw();
  }

  /** Shows the lines anew: they were changed elsewhere. */
  refresh() {
    this.#draw();
  }

  #draw() {
    this.#forms = [];
    this.#lines.replaceChildren(
      ...this.#job.otherWork.map((line, i) => {
        const box = document.createElement("div");
        box.className = "line";
        box.setAttribute("role", "group");
        box.setAttribute("aria-label", `Line ${i + 1}`);
        const fields = document.createElement("div");
        fields.className = "fields";
        this.#forms.push(new Form(fields, { rules: otherWorkFields, values: line, changed: this.#changed, system: () => "si" }));
        box.append(
          fields,
          button(`Remove line ${i + 1}`, () => {
            this.#job.otherWork.splice(i, 1);
            this.#draw();
            this.#changed();
          }),
        );
        return box;
      }),
    );
  }

  setErrors(paths) {
    this.#forms.forEach((form, i) => {
      const prefix = `prices.otherWork[${i}].`;
      form.setErrors(new Map([...paths].filter(([path]) => path.startsWith(prefix)).map(([path, texts]) => [path.slice(prefix.length), texts])));
    });
  }
}

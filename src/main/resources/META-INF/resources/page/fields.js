// Forms drawn from the rules of their fields. Values are text as typed; what is assumed for a blank stands under it.

import { signed } from "./figures.js";
import { Whole } from "./job.js";
import { capital, label, range, settled, unitOfBareNumber } from "./rules.js";

const MOST_IN_A_LIST = 40;
let forms = 0;

export class Form {
  #element;
  #fields = new Map();
  #values;
  #prefix;
  #changed;
  #system = () => "si";
  #note;
  #assumed = new Map();

  /**
   * @param rules the fields, drawn in their order
   * @param values texts by path, which is prefix + field; written to as one types
   * @param changed called after each change with the path
   * @param note where it is told what the field in focus is; a place of its own, below the fields, where left out
   */
  constructor(element, { rules, values, prefix = "", changed, system, note = formNote() }) {
    this.#element = element;
    this.#values = values;
    this.#prefix = prefix;
    this.#changed = changed;
    this.#system = system;
    this.#note = note;
    const form = `form-${++forms}`;
    element.replaceChildren(...rules.map((rule, i) => this.#field(rule, `${form}-${i}`)));
    if (!note.isConnected) element.append(note);
  }

  #field(rule, id) {
    const path = this.#prefix + rule.field;
    const box = document.createElement("div");
    box.className = "field";
    const name = document.createElement("label");
    name.htmlFor = id;
    name.textContent = capital(label(rule.field));
    if (rule.needed) name.append(" (needed)");
    const control = this.#control(rule, path, id);
    control.id = id;
    control.dataset.path = path;
    const hint = small("unseen", `${id}-hint`);
    const assumed = small("assumed", `${id}-assumed`);
    const error = small("error", `${id}-error`);
    const under = document.createElement("div");
    under.className = "under";
    under.append(error, assumed);
    control.setAttribute("aria-describedby", `${error.id} ${assumed.id} ${hint.id}`);
    const explain = () => (hint.textContent = [rule.description, range(rule, this.#system())].filter(Boolean).join(" "));
    explain();
    control.addEventListener("focus", () => (this.#note.textContent = `${name.textContent}: ${explain()}`));
    control.addEventListener("blur", () => (this.#note.textContent = ""));
    box.append(name, control, under, hint);
    this.#fields.set(path, { rule, control, assumed, error });
    return box;
  }

  #control(rule, path, id) {
    const value = this.#values.get(path) ?? "";
    const words = rule.holds === "true-or-false" ? ["yes", "no"] : rule.words;
    if (words && words.length <= MOST_IN_A_LIST) {
      const select = document.createElement("select");
      select.append(new Option("", ""), ...words.map((word) => new Option(word, word)));
      if (value !== "" && !words.includes(String(value))) select.append(new Option(String(value), String(value)));
      select.value = String(value);
      select.addEventListener("change", () => this.#set(path, select.value));
      return select;
    }
    const input = document.createElement("input");
    input.type = "text";
    input.autocomplete = "off";
    input.spellcheck = rule.holds === "text";
    input.value = String(value);
    input.readOnly = value instanceof Whole;
    if (words) {
      const list = document.createElement("datalist");
      list.id = `${id}-words`;
      list.append(...words.map((word) => new Option(word, word)));
      this.#element.after(list);
      input.setAttribute("list", list.id);
    }
    input.addEventListener("input", () => this.#set(path, settled(input.value, rule, this.#system())));
    input.addEventListener("change", () => {
      input.value = settled(input.value, rule, this.#system());
      this.#set(path, input.value);
    });
    return input;
  }

  #set(path, text) {
    if (this.#values.get(path) instanceof Whole && text === String(this.#values.get(path))) return;
    if (text === "") this.#values.delete(path);
    else this.#values.set(path, text);
    this.#changed(path);
  }

  /** Shows what was taken for what is blank. @param assumed {value, because} by path; @param how it was taken, in words */
  setAssumed(assumed, how = "assumed") {
    this.#assumed = assumed;
    for (const [path, field] of this.#fields) {
      const found = this.#values.has(path) ? undefined : assumed.get(path);
      const text = found ? `${how} ${signed(found.value)}` : this.#unitHint(field, path);
      if (field.assumed.textContent !== text) field.assumed.textContent = text;
      field.assumed.classList.toggle("unit", !found);
      field.assumed.title = found?.because ?? "";
    }
  }

  #unitHint({ rule }, path) {
    if (this.#values.has(path)) return "";
    const unit = unitOfBareNumber(rule, this.#system());
    return unit ? `a bare number: ${unit}` : "";
  }

  /** @param errors messages by path; @return paths that have no field here */
  setErrors(errors) {
    for (const [path, field] of this.#fields) {
      const text = (errors.get(path) ?? []).join("; ");
      if (field.error.textContent !== text) field.error.textContent = text;
      if (text) field.control.setAttribute("aria-invalid", "true");
      else field.control.removeAttribute("aria-invalid");
    }
  }

  /** The value of a field, or what is assumed for it: {text, assumed}; undefined where neither is known. */
  standing(path) {
    const value = this.#values.get(path);
    if (value !== undefined && value !== "") return { text: signed(String(value)), assumed: false };
    const text = this.#assumed.get(path)?.value;
    return text === undefined ? undefined : { text: signed(text), assumed: true };
  }

  /** Shows the values anew: they were changed elsewhere. */
  refresh() {
    for (const [path, { control }] of this.#fields) {
      const value = this.#values.get(path) ?? "";
      control.value = String(value);
      control.readOnly = value instanceof Whole;
    }
  }

  has(path) {
    return this.#fields.has(path);
  }

  focus(path) {
    const control = this.#fields.get(path)?.control;
    const fold = control?.closest("details");
    fold?.setAttribute("open", "");
    // the whole fold as far as it can be seen, the field itself in any case
    fold?.scrollIntoView();
    control?.focus();
  }
}

function small(kind, id) {
  const element = document.createElement("small");
  element.className = kind;
  element.id = id;
  return element;
}

/** A button beside fields. */
export function button(text, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}

/** Where the field in focus is explained; the field itself refers to the same words. */
export function formNote() {
  const element = document.createElement("p");
  element.className = "form-note";
  element.setAttribute("aria-hidden", "true");
  return element;
}

// The joint list: a grid that is written in like a spreadsheet. It keeps no values of its own: they are the job's.

import { isShown, ofHeading, ordered } from "./columns.js";
import { readBlock, writeBlock } from "./block.js";
import { Job, Whole } from "./job.js";
import { capital, jointFields, kindNames, label, range, ruleOf, settled, unitOfBareNumber } from "./rules.js";

const UNDO_STEPS = 200;

export class JointList {
  #element;
  #on;
  #job;
  #system;
  #columns = [];
  #results;
  #table;
  #body;
  #rows = [];
  #row = 0;
  #col = 0;
  // the row of the joint in hand: where one is, or came from where one only went on after writing
  #inHand = 0;
  #anchor = null;
  #edit = null;
  #errors = new Map();
  #chosen;
  #past = [];
  #future = [];
  #leaving = false;
  #dragging = false;

  /**
   * @param on changed(): a value changed; chosen(): another joint is in hand; noted(text, faulty): what is to be said
   *     of the cell in focus; notice(text): something that was done and should be known; columns(): another set of columns
   * @param results columns of answers: [{title, of(jointAnswer), told(all)}], where told gives what tells one of them
   */
  constructor(element, on, results) {
    this.#element = element;
    this.#on = on;
    this.#results = results;
    this.#chosen = new Set(JSON.parse(localStorage.getItem("seamtally.columns") ?? "[]"));
    this.#table = document.createElement("table");
    this.#table.setAttribute("role", "grid");
    this.#table.setAttribute("aria-labelledby", "joints-title");
    this.#table.setAttribute("aria-describedby", "keys");
    this.#table.setAttribute("aria-multiselectable", "true");
    element.append(this.#table);
    for (const [name, words] of [["kind", kindNames]]) {
      element.append(wordList(name, words));
    }
    this.#table.addEventListener("keydown", (event) => this.#key(event));
    this.#table.addEventListener("pointerdown", (event) => this.#pointerDown(event));
    this.#table.addEventListener("pointerover", (event) => this.#pointerOver(event));
    document.addEventListener("pointerup", () => (this.#dragging = false));
    this.#table.addEventListener("dblclick", () => this.#edit || this.#beginEdit());
    this.#table.addEventListener("focusin", (event) => this.#focused(event));
    for (const kind of ["copy", "cut", "paste"]) {
      this.#table.addEventListener(kind, (event) => this.#clipboard(event));
    }
  }

  /** Shows a job's joints; the one in hand is the first. */
  show(job, system) {
    this.#job = job;
    this.#system = system;
    this.#errors = new Map();
    this.#past = [];
    this.#future = [];
    this.#row = 0;
    this.#col = 0;
    this.#inHand = 0;
    this.#anchor = null;
    this.#edit = null;
    this.#build();
  }

  /** Another system of units for bare numbers: what was typed stays as it is. */
  setSystem(system) {
    this.#system = system;
    this.#build();
  }

  /** The row of the joint in hand. */
  get row() {
    return this.#inHand;
  }

  /** The cell that is being written in, as its row and field; null where none is. */
  get inEdit() {
    return this.#edit && { row: this.#edit.row, field: this.#edit.field };
  }

  // ---- what is shown

  #columnsNow() {
    const used = [...new Set(this.#job.joints.map((joint) => joint.get("kind")))];
    const kindsUsed = used.length > 0 ? used : [kindNames[0]];
    return ordered.filter((field) => this.#chosen.has(field) || isShown(field, this.#job.joints, kindsUsed));
  }

  /** Fields with whether they are shown, and whether that can be chosen. */
  get choice() {
    const shown = new Set(this.#columns);
    return ordered.map((field) => ({ field, shown: shown.has(field), chosen: this.#chosen.has(field) }));
  }

  choose(field, wanted) {
    if (wanted) this.#chosen.add(field);
    else this.#chosen.delete(field);
    localStorage.setItem("seamtally.columns", JSON.stringify([...this.#chosen]));
    this.refresh();
  }

  #build() {
    const field = this.#columns[this.#col];
    this.#columns = this.#columnsNow();
    this.#col = Math.max(0, field === undefined ? 0 : this.#columns.indexOf(field));
    const head = document.createElement("thead");
    const line = head.insertRow();
    line.append(heading("", "No."));
    for (const name of this.#columns) line.append(this.#heading(name));
    for (const result of this.#results) {
      const cell = heading("", result.title);
      cell.className = "result";
      line.append(cell);
    }
    this.#body = document.createElement("tbody");
    this.#rows = [];
    this.#table.replaceChildren(head, this.#body);
    this.refresh();
    this.#on.columns();
  }

  #heading(field) {
    const words = label(field).split(" ");
    const part = field.includes(".") ? words.shift() : "";
    const cell = heading(part, words.join(" "));
    const unit = unitOfBareNumber(jointFields.get(field), this.#system);
    if (unit) {
      const hint = document.createElement("span");
      hint.className = "unit";
      hint.textContent = unit;
      hint.title = `a bare number is taken as ${unit}`;
      cell.append(" ", hint);
    }
    return cell;
  }

  /** Brings the table up to what the job holds. */
  refresh() {
    const columns = this.#columnsNow();
    if (columns.join() !== this.#columns.join()) {
      this.#build();
      return;
    }
    const wanted = this.#job.joints.length + 1;
    while (this.#rows.length > wanted) this.#rows.pop().line.remove();
    while (this.#rows.length < wanted) this.#rows.push(this.#newRow(this.#rows.length));
    this.#row = Math.min(this.#row, wanted - 1);
    for (let row = 0; row < wanted; row++) this.#paintRow(row);
    const last = Math.max(0, wanted - 2);
    const gone = this.#inHand > last;
    if (gone) this.#inHand = last;
    this.#mark();
    if (gone) this.#on.chosen();
  }

  #newRow(row) {
    const line = this.#body.insertRow();
    const head = document.createElement("th");
    head.scope = "row";
    head.setAttribute("role", "rowheader");
    line.append(head);
    const cells = this.#columns.map((_, col) => {
      const cell = line.insertCell();
      cell.setAttribute("role", "gridcell");
      cell.tabIndex = -1;
      cell.dataset.row = row;
      cell.dataset.col = col;
      return cell;
    });
    const results = this.#results.map(() => {
      const cell = line.insertCell();
      cell.setAttribute("role", "gridcell");
      cell.className = "result";
      return cell;
    });
    return { line, head, cells, results };
  }

  #paintRow(row) {
    const joint = this.#job.joints[row];
    const { line, head, cells } = this.#rows[row];
    const number = joint ? String(row + 1) : "+";
    if (head.textContent !== number) head.textContent = number;
    line.classList.toggle("fresh", !joint);
    const kind = joint?.get("kind");
    this.#columns.forEach((field, col) => {
      const cell = cells[col];
      if (this.#edit?.cell === cell) return;
      const value = joint?.get(field) ?? "";
      const text = String(value);
      if (cell.textContent !== text) cell.textContent = text;
      cell.classList.toggle("none", Boolean(joint) && text === "" && !ruleOf(kind, field));
      const faults = this.#errors.get(row + "|" + field);
      cell.classList.toggle("faulty", Boolean(faults));
      if (faults) {
        cell.setAttribute("aria-invalid", "true");
        cell.setAttribute("aria-describedby", "cell-note");
      } else if (cell.hasAttribute("aria-invalid")) {
        cell.removeAttribute("aria-invalid");
        cell.removeAttribute("aria-describedby");
      }
    });
  }

  /** Shows each joint's own figures. @param answers by row; a row without one shows none */
  setAnswers(answers) {
    const told = this.#results.map((result) => result.told([...answers.values()].map(result.of)));
    this.#rows.forEach(({ results }, row) => {
      const answer = answers.get(row);
      this.#results.forEach((result, i) => {
        const text = answer ? told[i](result.of(answer)) : "";
        if (results[i].textContent !== text) results[i].textContent = text;
      });
    });
  }

  /** Marks what was refused. @param errors messages by "row|field" */
  setErrors(errors) {
    this.#errors = errors;
    this.#rows.forEach((_, row) => this.#paintRow(row));
    this.#note();
  }

  // ---- where one is

  #bounds() {
    const at = this.#anchor ?? [this.#row, this.#col];
    return {
      top: Math.min(at[0], this.#row),
      bottom: Math.max(at[0], this.#row),
      left: Math.min(at[1], this.#col),
      right: Math.max(at[1], this.#col),
    };
  }

  #mark() {
    const { top, bottom, left, right } = this.#bounds();
    const several = this.#anchor !== null;
    this.#rows.forEach(({ cells, line }, row) => {
      line.classList.toggle("current", row === this.#inHand);
      cells.forEach((cell, col) => {
        const current = row === this.#row && col === this.#col;
        const tab = current ? 0 : -1;
        if (cell.tabIndex !== tab) cell.tabIndex = tab;
        const selected = several && row >= top && row <= bottom && col >= left && col <= right;
        if (selected !== cell.classList.contains("selected")) {
          cell.classList.toggle("selected", selected);
          if (selected) cell.setAttribute("aria-selected", "true");
          else cell.removeAttribute("aria-selected");
        }
      });
    });
  }

  /** Goes to a cell; a field that has no column gets one. */
  goTo(row, field) {
    if (!this.#columns.includes(field) && jointFields.has(field)) {
      this.#chosen.add(field);
      this.refresh();
    }
    this.#move(row, Math.max(0, this.#columns.indexOf(field)));
  }

  /** @param takes whether the joint that one comes to is taken in hand; a row without one never is */
  #move(row, col, extend = false, takes = true) {
    if (extend) this.#anchor ??= [this.#row, this.#col];
    else this.#anchor = null;
    this.#row = Math.max(0, Math.min(row, this.#rows.length - 1));
    this.#col = Math.max(0, Math.min(col, this.#columns.length - 1));
    if (takes) this.#takeInHand();
    this.#mark();
    this.#cell().focus({ preventScroll: true });
    this.#cell().scrollIntoView({ block: "nearest", inline: "nearest" });
    this.#note();
  }

  #takeInHand() {
    if (this.#inHand === this.#row || this.#row >= this.#job.joints.length) return;
    this.#inHand = this.#row;
    this.#on.chosen();
  }

  #cell() {
    return this.#rows[this.#row].cells[this.#col];
  }

  #note() {
    const field = this.#columns[this.#col];
    const joint = this.#job.joints[this.#row];
    const rule = joint ? ruleOf(joint.get("kind"), field) : jointFields.get(field);
    const faults = this.#errors.get(this.#row + "|" + field) ?? [];
    const said = rule ? [rule.description, range(rule, this.#system)].filter(Boolean).join(" ") : "This kind of joint has no such size.";
    this.#on.noted(faults.length > 0 ? faults.join("; ") : `${capital(label(field))}: ${said}`, faults.length > 0);
  }

  #focused(event) {
    const cell = event.target.closest("td[data-row]");
    if (!cell || this.#edit) return;
    this.#note();
  }

  #pointerDown(event) {
    const cell = event.target.closest("td[data-row]");
    if (!cell || event.target.closest("input")) return;
    event.preventDefault();
    const row = Number(cell.dataset.row);
    const col = Number(cell.dataset.col);
    const again = cell === document.activeElement && !event.shiftKey;
    if (this.#edit) this.#endEdit(true);
    this.#dragging = event.pointerType === "mouse";
    this.#move(row, col, event.shiftKey);
    if (again) this.#beginEdit();
  }

  #pointerOver(event) {
    const cell = event.target.closest("td[data-row]");
    if (!cell || !this.#dragging || this.#edit || event.buttons !== 1) return;
    const row = Number(cell.dataset.row);
    const col = Number(cell.dataset.col);
    if (row !== this.#row || col !== this.#col) this.#move(row, col, true);
  }

  // ---- keys

  #key(event) {
    if (event.isComposing) return;
    if (this.#edit) this.#keyInEdit(event);
    else this.#keyOutside(event);
  }

  #keyInEdit(event) {
    const steps = { Enter: [event.shiftKey ? -1 : 1, 0], Tab: [0, event.shiftKey ? -1 : 1] };
    if (this.#edit.typed) Object.assign(steps, { ArrowUp: [-1, 0], ArrowDown: [1, 0] });
    if (event.key === "Escape") {
      event.preventDefault();
      this.#endEdit(false);
      this.#cell().focus({ preventScroll: true });
    } else if (steps[event.key] && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      this.#endEdit(true);
      const [down, right] = steps[event.key];
      // who wrote looks at what became of it: the joint written in stays in hand until another is gone to or written in
      this.#step(down, right, false);
    }
  }

  /** One cell on; past a row's end on to the next row. */
  #step(down, right, takes = true) {
    let row = this.#row + down;
    let col = this.#col + right;
    if (col >= this.#columns.length && row < this.#rows.length - 1) [row, col] = [row + 1, 0];
    if (col < 0 && row > 0) [row, col] = [row - 1, this.#columns.length - 1];
    this.#move(row, col, false, takes);
  }

  #keyOutside(event) {
    const control = event.ctrlKey || event.metaKey;
    const leaving = this.#leaving;
    this.#leaving = false;
    const act = this.#action(event, control, leaving);
    if (act) {
      event.preventDefault();
      act();
    } else if (event.key.length === 1 && !control && !event.altKey) {
      event.preventDefault();
      this.#beginEdit(event.key);
    }
  }

  #action(event, control, leaving) {
    const far = { row: this.#rows.length - 1, col: this.#columns.length - 1 };
    const go = (row, col) => () => this.#move(row, col, event.shiftKey);
    switch (event.key) {
      case "ArrowUp":
        return go(control ? 0 : this.#row - 1, this.#col);
      case "ArrowDown":
        return go(control ? far.row : this.#row + 1, this.#col);
      case "ArrowLeft":
        return go(this.#row, control ? 0 : this.#col - 1);
      case "ArrowRight":
        return go(this.#row, control ? far.col : this.#col + 1);
      case "Home":
        return go(control ? 0 : this.#row, 0);
      case "End":
        return go(control ? far.row : this.#row, far.col);
      case "PageUp":
        return go(this.#row - 12, this.#col);
      case "PageDown":
        return go(this.#row + 12, this.#col);
      case "Tab":
        return this.#tab(event.shiftKey, leaving, far);
      case "Enter":
        return control ? () => this.insertRow() : () => this.#beginEdit();
      case "F2":
        return () => this.#beginEdit();
      case "Insert":
        return () => this.insertRow();
      case "Delete":
      case "Backspace":
        return control ? () => this.removeRows() : () => this.#clear();
      case "Escape":
        return () => {
          this.#leaving = true;
          this.#anchor = null;
          this.#mark();
        };
      default:
        return control ? this.#letter(event.key.toLowerCase(), event.shiftKey) : null;
    }
  }

  #tab(back, leaving, far) {
    const atEnd = back ? this.#row === 0 && this.#col === 0 : this.#row === far.row && this.#col === far.col;
    return leaving || atEnd ? null : () => this.#step(0, back ? -1 : 1);
  }

  #letter(key, shift) {
    switch (key) {
      case "d":
        return () => this.duplicateRows();
      case "z":
        return shift ? () => this.redo() : () => this.undo();
      case "y":
        return () => this.redo();
      case "a":
        return () => {
          this.#move(0, 0);
          this.#move(Math.max(0, this.#rows.length - 2), this.#columns.length - 1, true);
        };
      default:
        return null;
    }
  }

  // ---- writing in a cell

  #beginEdit(first) {
    const row = this.#row;
    const field = this.#columns[this.#col];
    const joint = this.#job.joints[row];
    const value = joint?.get(field) ?? "";
    if (value instanceof Whole) {
      this.#on.notice("This joint has an analysis of its own; Delete takes it out.");
      return;
    }
    const rule = joint ? ruleOf(joint.get("kind"), field) : jointFields.get(field);
    if (joint && !rule && value === "") {
      this.#on.notice(`A ${joint.get("kind")} has no ${label(field)}.`);
      return;
    }
    this.#anchor = null;
    this.#takeInHand();
    this.#mark();
    const cell = this.#cell();
    const input = document.createElement("input");
    input.type = "text";
    input.autocomplete = "off";
    input.spellcheck = false;
    input.value = first ?? value;
    input.setAttribute("aria-label", `${label(field)}, row ${row + 1}`);
    input.setAttribute("aria-describedby", "cell-note");
    if (rule?.words) input.setAttribute("list", this.#wordsOf(field, rule));
    this.#edit = { row, field, rule, cell, input, value, wasFresh: !joint, before: this.#snapshot(), typed: first !== undefined };
    cell.replaceChildren(input);
    cell.classList.add("editing");
    input.focus({ preventScroll: true });
    if (first === undefined) input.select();
    input.addEventListener("input", () => this.#provisional());
    input.addEventListener("blur", () => this.#edit?.input === input && this.#endEdit(true));
    if (first !== undefined) this.#provisional();
  }

  #wordsOf(field, rule) {
    const id = "words-" + field.replaceAll(".", "-");
    if (!document.getElementById(id)) this.#element.append(wordList(field, rule.words));
    return id;
  }

  /** What is being typed counts at once. */
  #provisional() {
    const { row, field, rule, input } = this.#edit;
    if (!this.#job.joints[row]) {
      this.#job.joints[row] = this.#job.freshJoint(row);
      this.#takeInHand();
      this.#mark();
    }
    this.#job.joints[row].set(field, settled(input.value, rule, this.#system));
    this.#on.changed();
  }

  #endEdit(kept) {
    const { row, field, rule, cell, input, value, wasFresh, before } = this.#edit;
    this.#edit = null;
    const text = settled(input.value, rule, this.#system);
    cell.classList.remove("editing");
    const joint = this.#job.joints[row];
    const changed = kept && text !== String(value);
    if (changed) {
      this.#past.push(before);
      this.#future = [];
      if (this.#past.length > UNDO_STEPS) this.#past.shift();
      this.#set(row, field, text);
    } else if (joint && wasFresh) {
      this.#job.joints.splice(row, 1);
    } else if (joint) {
      put(joint, field, value);
    }
    this.refresh();
    this.#rows[row] && this.#paintRow(row);
    this.#on.changed();
  }

  #set(row, field, text) {
    while (this.#job.joints.length <= row) this.#job.joints.push(this.#job.freshJoint(this.#job.joints.length));
    const joint = this.#job.joints[row];
    put(joint, field, text);
    if (field === "kind" && kindNames.includes(text)) this.#dropStrangers(joint, text);
  }

  /** Sizes that a joint's new kind does not have go, and that is said. */
  #dropStrangers(joint, kind) {
    const strangers = [...joint.keys()].filter((field) => !ruleOf(kind, field));
    strangers.forEach((field) => joint.delete(field));
    if (strangers.length > 0) {
      this.#on.notice(`Taken out, since a ${kind} has none: ${strangers.map(label).join(", ")}. Ctrl+Z brings it back.`);
    }
  }

  // ---- rows

  #snapshot() {
    return this.#job.joints.map((joint) => new Map(joint));
  }

  #change(act) {
    this.#past.push(this.#snapshot());
    if (this.#past.length > UNDO_STEPS) this.#past.shift();
    this.#future = [];
    act();
    this.#errors = new Map();
    this.refresh();
    this.#on.changed();
    this.#on.chosen();
  }

  insertRow() {
    const at = Math.min(this.#row + 1, this.#job.joints.length);
    this.#change(() => this.#job.joints.splice(at, 0, this.#job.freshJoint(at)));
    this.#move(at, 0);
  }

  duplicateRows() {
    const { top, bottom } = this.#bounds();
    const copies = this.#job.joints.slice(top, bottom + 1).map((joint) => new Map(joint).set("mark", ""));
    if (copies.length === 0) return;
    const at = Math.min(bottom, this.#job.joints.length - 1) + 1;
    this.#change(() => this.#job.joints.splice(at, 0, ...copies));
    this.#move(at, this.#col);
  }

  removeRows() {
    const { top, bottom } = this.#bounds();
    if (top >= this.#job.joints.length) return;
    this.#change(() => this.#job.joints.splice(top, bottom - top + 1));
    this.#move(Math.min(top, this.#job.joints.length), this.#col);
  }

  #clear() {
    const { top, bottom, left, right } = this.#bounds();
    const fields = this.#columns.slice(left, right + 1).filter((field) => field !== "kind");
    this.#change(() => {
      for (const joint of this.#job.joints.slice(top, bottom + 1)) fields.forEach((field) => put(joint, field, ""));
    });
    this.#move(this.#row, this.#columns.indexOf(fields[0] ?? "kind"));
  }

  undo() {
    this.#restore(this.#past, this.#future);
  }

  redo() {
    this.#restore(this.#future, this.#past);
  }

  #restore(from, to) {
    const joints = from.pop();
    if (!joints) return;
    to.push(this.#snapshot());
    this.#job.joints = joints;
    this.#errors = new Map();
    this.refresh();
    this.#on.changed();
    this.#move(this.#row, this.#col);
    this.#on.chosen();
  }

  // ---- clipboard

  #clipboard(event) {
    if (this.#edit) return;
    event.preventDefault();
    if (event.type === "paste") {
      this.paste(event.clipboardData.getData("text/plain"));
      return;
    }
    const { top, bottom, left, right } = this.#bounds();
    const rows = this.#job.joints.slice(top, bottom + 1);
    const fields = this.#columns.slice(left, right + 1);
    event.clipboardData.setData("text/plain", writeBlock(rows.map((joint) => fields.map((field) => String(joint.get(field) ?? "")))));
    if (event.type === "cut") this.#clear();
  }

  /** Puts a block in from the cell in focus on; where its first row names columns, in those. */
  paste(text) {
    const rows = readBlock(text);
    const headings = rows[0].map(ofHeading);
    const named = headings.filter((heading) => heading.field).length;
    const hasHead = rows.length > 1 && named >= Math.min(2, rows[0].length) && named * 2 > rows[0].filter(Boolean).length;
    const { top, left } = this.#bounds();
    const places = hasHead
      ? headings
      : rows[0].map((_, i) => ({ field: this.#columns[left + i], unit: null }));
    const lost = hasHead
      ? rows[0].filter((heading, i) => heading !== "" && !headings[i].field)
      : rows[0].length > this.#columns.length - left
        ? [`${rows[0].length - this.#columns.length + left} on the right`]
        : [];
    const lines = hasHead ? rows.slice(1) : rows;
    this.#change(() => lines.forEach((line, i) => this.#pasteLine(top + i, line, places)));
    this.#move(top, left);
    const count = lines.length === 1 ? "One row" : `${lines.length} rows`;
    this.#on.notice(
      lost.length > 0 ? `${count} pasted. Columns left out, since there is no such field: ${lost.join(", ")}.` : `${count} pasted.`,
    );
  }

  #pasteLine(row, line, places) {
    while (this.#job.joints.length <= row) this.#job.joints.push(this.#job.freshJoint(this.#job.joints.length));
    const joint = this.#job.joints[row];
    const cells = line.map((text, i) => [places[i]?.field, text, places[i]?.unit]).filter(([field]) => field);
    const kind = cells.find(([field]) => field === "kind")?.[1].trim();
    if (kind) joint.set("kind", kind);
    for (const [field, text, unit] of cells) {
      if (field === "kind") continue;
      const rule = ruleOf(joint.get("kind"), field) ?? jointFields.get(field);
      const typed = text.trim();
      put(joint, field, unit && /^[\d.+-][\d./ -]*$/.test(typed) ? `${typed} ${unit}` : settled(typed, rule, this.#system));
    }
  }
}

function put(joint, field, text) {
  if (text === "") joint.delete(field);
  else joint.set(field, text);
}

function heading(part, text) {
  const cell = document.createElement("th");
  cell.scope = "col";
  cell.setAttribute("role", "columnheader");
  if (part) {
    const group = document.createElement("span");
    group.className = "part";
    group.textContent = part + " ";
    cell.append(group);
  }
  cell.append(text);
  return cell;
}

function wordList(field, words) {
  const list = document.createElement("datalist");
  list.id = "words-" + field.replaceAll(".", "-");
  for (const word of words) list.append(new Option(word, word));
  return list;
}

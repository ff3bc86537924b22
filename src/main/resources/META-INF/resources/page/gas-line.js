// The frame's gas settings in a line, wherever they are looked for: at their fold, by the price, by the picture.

const PARTS = [
  ["gas.hose.length", (text) => `${text} hose`],
  ["gas.hose.insideDiameter", (text) => `${text} bore`],
  ["gas.orificeDiameter", (text) => `${text} orifice`],
  ["gas.supplyGaugePressure", (text) => text],
  ["gas.flow", (text) => text],
];

export class GasLine {
  #form;
  #summary;
  #text = null;

  /**
   * @param form the fields of the frame's gas settings
   * @param summary where they stand in the head of their fold
   */
  constructor(form, summary) {
    this.#form = form;
    this.#summary = summary;
    for (const line of document.querySelectorAll(".gas-line")) {
      line.querySelector("button").onclick = () => form.focus("gas.hose.length");
    }
    this.draw();
  }

  draw() {
    const text = this.#words();
    if (this.#text === text) return;
    this.#text = text;
    this.#summary.textContent = text || "all assumed";
    for (const line of document.querySelectorAll(".gas-line")) {
      line.hidden = text === "";
      line.querySelector("span").textContent = text;
    }
  }

  #words() {
    const known = PARTS.map(([path, words]) => ({ words, ...this.#form.standing(path) }))
      // that there is no orifice needs no word
      .filter(({ text }) => text !== undefined && /\d/.test(text));
    const allAssumed = known.every(({ assumed }) => assumed);
    const told = known.map(({ words, text, assumed }) => words(text) + (assumed && !allAssumed ? " (assumed)" : ""));
    return told.join(", ") + (allAssumed && told.length > 0 ? " (all assumed)" : "");
  }
}

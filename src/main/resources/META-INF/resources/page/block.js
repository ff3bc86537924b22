// Blocks of cells as spreadsheets put them on the clipboard: tabs between cells, a line a row, quotes around what has either.

/** The rows of a block. */
export function readBlock(text) {
  const rows = [[]];
  let cell = "";
  let quoted = false;
  const endCell = () => {
    rows.at(-1).push(cell);
    cell = "";
  };
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (sign === '"' && cell === "" && closes(text, i + 1)) {
      quoted = true;
    } else if (sign === "\t") {
      endCell();
    } else if (sign === "\n" || sign === "\r") {
      if (sign === "\r" && text[i + 1] === "\n") i++;
      endCell();
      rows.push([]);
    } else cell += sign;
  }
  endCell();
  if (rows.length > 1 && rows.at(-1).length === 1 && rows.at(-1)[0] === "") rows.pop();
  return rows;
}

/** Whether a quote that opens a cell closes at that cell's end: an inch mark by itself does not. */
function closes(text, from) {
  for (let i = from; i < text.length; i++) {
    if (text[i] !== '"') continue;
    if (text[i + 1] === '"') {
      i++;
      continue;
    }
    return i + 1 === text.length || /[\t\r\n]/.test(text[i + 1]);
  }
  return false;
}

export function writeBlock(rows) {
  return rows.map((row) => row.map((cell) => (/[\t\r\n"]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join("\t")).join("\r\n");
}

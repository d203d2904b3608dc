// The closing table of `npm run demo`: a line a rehearsal, from the JSON sheets.

const OUTCOME = { pass: "PASS", fail: "FAIL", provisional: "PROVISIONAL", "not-decided": "NOT DECIDED" };
const HEADS = ["", "rehearsal", "result", "coverage", "critical", "unsafe", "time"];
/** Titles wrap in what the figures leave, but not below this. */
const NARROWEST_TITLE = 10;
/** Below this many columns one blank stands between the columns of the table, else two. */
const ROOMY = 76;

/** @param {{title: string, sheet: object}[]} rehearsals @param {number} width columns of the terminal */
export function demoTable(rehearsals, width) {
  const rows = rehearsals.map(({ title, sheet }, place) => [String(place + 1), title, OUTCOME[sheet.result.outcome], coverage(sheet), `${sheet.critical.met} of ${sheet.critical.total}`, unsafe(sheet), time(sheet)]);
  const widths = HEADS.map((head, column) => Math.max(head.length, ...rows.map((row) => row[column].length)));
  const gap = width < ROOMY ? " " : "  ";
  const others = widths.reduce((sum, columns, column) => sum + (column === 1 ? 0 : columns), 0) + gap.length * (HEADS.length - 1);
  widths[1] = Math.max(NARROWEST_TITLE, Math.min(widths[1], width - others));
  return [HEADS, ...rows].flatMap((row) => lines(row, widths, gap)).join("\n");
}

function lines(row, widths, gap) {
  const titles = wrapped(row[1], widths[1]);
  return titles.map((title, place) => row.map((cell, column) => (column === 1 ? title : place === 0 ? cell : "").padEnd(widths[column])).join(gap).trimEnd());
}

/** Lines of at most so many columns, broken at blanks. */
export function wrapped(title, columns) {
  const found = [""];
  for (const word of title.split(" ")) {
    const last = found[found.length - 1];
    if (last === "" || last.length + 1 + word.length <= columns) found[found.length - 1] = last === "" ? word : `${last} ${word}`;
    else found.push(word);
  }
  return found;
}

function coverage({ total }) {
  return total.percent === null ? "-" : `${total.percent}%${total.provisional ? "?" : ""}`;
}

function unsafe({ unsafe: { found } }) {
  const ids = (holds) => new Set(found.filter((statement) => !statement.corrected && holds(statement)).map(({ id }) => id));
  const stand = ids(({ listen }) => !listen);
  const standing = stand.size;
  const open = ids(({ id, listen }) => listen && !stand.has(id)).size;
  return open > 0 ? `${standing}, ${open}?` : standing === 0 ? "none" : String(standing);
}

function time({ time: { used, overLimit } }) {
  if (used.value === null) return "-";
  const whole = Math.round(used.value);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}${(overLimit.value ?? 0) > 0 ? " over" : ""}`;
}

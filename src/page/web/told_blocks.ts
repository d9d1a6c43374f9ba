// What a command tells in columns and lines, as tables and paragraphs of the page.
import { make, spokenFirst } from "./page_parts";

/** Shows a place on the map. */
export type GoTo = (lat: number, lon: number) => void;

/** Where its columns begin; none for a line that is no head of a table. */
function columnsOf(line: string): number[] | null {
  if (!/(^|\s{2})hard\s{2}/.test(line)) return null;
  return [...line.matchAll(/\S+(?: \S+)*/g)].map((match) => match.index);
}

const cellsOf = (line: string, columns: number[]): string[] => columns.map((from, k) => line.slice(from, columns[k + 1]).trim());

/** A place is its words, and a button that shows it. */
function cell(text: string, goTo: GoTo): (Node | string)[] {
  const place = /^(.*\S) (-?\d+\.\d+),(-?\d+\.\d+)$/.exec(text);
  if (!place) return [text];
  const [, name = "", lat, lon] = place;
  return [name, " ", make("button", { type: "button", class: "small", "aria-label": `Show ${name} on the map`, onclick: () => goTo(Number(lat), Number(lon)) }, "show")];
}

/** Columns that begin with a kind of practice. */
const ofKinds = new Set(["what", "not met"]);

/** Why it counts stands below what it is: a column of tags is wider than the sheet. */
function withReasons(heads: string[], rows: string[][]): { heads: string[]; rows: string[][]; reasons: string[] | null } {
  const because = heads.indexOf("because");
  if (because < 0) return { heads, rows, reasons: null };
  const others = (cells: string[]): string[] => cells.filter((_, column) => column !== because);
  return { heads: others(heads), rows: rows.map(others), reasons: rows.map((cells) => cells[because] ?? "") };
}

function table(name: string, allHeads: string[], allRows: string[][], goTo: GoTo): HTMLElement {
  const { heads, rows, reasons } = withReasons(allHeads, allRows);
  return make("div", { class: "table", tabindex: "0", role: "region", "aria-label": name },
    make("table", {}, make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))),
      make("tbody", {}, ...rows.flatMap((cells, row) => [
        make("tr", {}, ...cells.map((text, column) => make("td", {}, ...cell(ofKinds.has(heads[column] ?? "") ? spokenFirst(text) : text, goTo)))),
        ...(reasons ? [make("tr", { class: "reason" }, make("td", { colspan: String(heads.length) }, reasons[row] ?? ""))] : []),
      ]))));
}

const columnsOfText = 80; // at which the commands fold (command/folded.cpp)

/** Lines as paragraphs, set in as they are; folded: what was folded for want of columns is one line again. */
export function setIn(said: string, folded: boolean): HTMLElement[] {
  const lines: { indent: number; text: string }[] = [];
  let before = "";
  for (const line of said.split("\n").filter((each) => each.trim())) {
    const indent = line.search(/\S/), last = lines.at(-1);
    const noRoom = before.length + 1 + (line.trim().split(" ")[0] ?? "").length > columnsOfText;
    if (folded && last && noRoom && indent === last.indent + 2) last.text += ` ${line.trim()}`;
    else lines.push({ indent, text: line.trim() });
    before = line;
  }
  return lines.map(({ indent, text }) => {
    const paragraph = make("p", { class: "set-in" }, indent === 0 ? make("strong", {}, text) : text);
    paragraph.style.paddingLeft = `${indent / 2}rem`;
    return paragraph;
  });
}

/** Streets and how often they were driven; without the map's own numbers of them. Lines that are no such table are told as they are. */
export function streetsTable(said: string): HTMLElement[] {
  const [head = "", ...lines] = said.split("\n").filter((line) => line.trim());
  if (!head.startsWith("times  ")) return setIn(said, true);
  const columns = [...head.matchAll(/\S+(?: \S+)*/g)].map((match) => match.index);
  const known = (line: string): string[] => cellsOf(line, columns).slice(0, -1);
  return [table("Streets by use", known(head), lines.map(known), () => undefined)];
}

export function toldBlocks(said: string, goTo: GoTo): HTMLElement[] {
  const blocks: HTMLElement[] = [];
  const lines = said.split("\n");
  let title = "";
  for (let k = 0; k < lines.length; ++k) {
    const line = lines[k] ?? "", columns = columnsOf(line);
    if (columns) {
      const heads = cellsOf(line, columns), hard = heads.indexOf("hard");
      const rows: string[][] = [];
      while (k + 1 < lines.length && /^\d$/.test(cellsOf(lines[k + 1] ?? "", columns)[hard] ?? "")) rows.push(cellsOf(lines[++k] ?? "", columns));
      blocks.push(table(title, heads, rows, goTo));
      continue;
    }
    const last = blocks.at(-1);
    title = line.trim();
    // Folded lines are set in; a drive of its own has a line of its own.
    if (/^ {2,}(?!drive \d)\S/.test(line) && last?.tagName === "P") last.append(` ${line.trim()}`);
    else if (line.trim()) blocks.push(make("p", {}, line.trim()));
  }
  return blocks;
}

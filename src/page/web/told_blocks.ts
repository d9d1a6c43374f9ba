// What a command tells in columns and lines, as tables and paragraphs of the page.
import { make } from "./page_parts";

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

function table(name: string, heads: string[], rows: string[][], goTo: GoTo): HTMLElement {
  return make("div", { class: "table", tabindex: "0", role: "region", "aria-label": name },
    make("table", {}, make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))),
      make("tbody", {}, ...rows.map((cells) => make("tr", {}, ...cells.map((text) => make("td", {}, ...cell(text, goTo))))))));
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

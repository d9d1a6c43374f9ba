// Small pieces that the page is put together from.

type Parts = (Node | string | null | undefined)[];

/** An element with attributes (a function is a listener: {onclick: …}) and what is inside it. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K, attributes: Record<string, string | boolean | EventListener> = {}, ...inside: Parts): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (typeof value === "boolean") element.toggleAttribute(name, value);
    else element.setAttribute(name, value);
  }
  element.append(...inside.filter((part): part is Node | string => part !== null && part !== undefined));
  return element;
}

/** The element of the page with that name. Rules: it is there. */
export function part<T extends HTMLElement>(id: string): T {
  return document.getElementById(id) as T;
}

/** An element of a drawing. */
export function shape(tag: string, attributes: Record<string, string | number>, ...inside: (Node | string)[]): SVGElement {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  element.append(...inside);
  return element;
}

const taken = new Set<string>();

/** An id that no other field has, or a label would be another's. */
function ownId(name: string): string {
  let id = name;
  for (let more = 2; taken.has(id); ++more) id = `${name}-${more}`;
  taken.add(id);
  return id;
}

/** A labelled field in a form. wide: as wide as all fields of a row, or as two of them. */
export function field(label: string, control: HTMLElement, wide: boolean | "double" = false): HTMLElement {
  control.id ||= ownId(`field-${label.toLowerCase().replace(/[^a-z]+/g, "-")}`);
  return make("div", wide ? { class: wide === "double" ? wide : "wide" } : {}, make("label", { for: control.id }, label), control);
}

export const spoken = (name: string): string => name.replaceAll("-", " ");

/** A line that begins with a kind of practice as the program names it: "move-off: begin it", "roundabout:right, exit 2". */
export const spokenFirst = (line: string): string =>
  line.replace(/^([a-z]+(?:-[a-z]+)*)(?::(?=[a-z])([a-z]+(?:-[a-z]+)*))?/, (_, kind: string, movement?: string) => spoken(kind) + (movement ? ` ${spoken(movement)}` : ""));

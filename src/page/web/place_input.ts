// A field for a place: what the area calls so is offered while one types.
import { find, type Place } from "./ask";
import { make } from "./page_parts";

const leastLetters = 3, mostOffered = 8;
let lists = 0;

/** The field, and the list of what is offered in it, which stands beside it. */
export function placeInput(attributes: Record<string, string | boolean>): [HTMLInputElement, HTMLDataListElement] {
  const offered = make("datalist", { id: `places-${++lists}` });
  const input = make("input", { type: "text", autocomplete: "off", list: offered.id, ...attributes });
  let typing: AbortController | undefined;
  const propose = async (): Promise<void> => {
    typing?.abort();
    typing = new AbortController();
    const text = input.value.trim();
    if (text.length < leastLetters) return;
    try {
      const found = await find(text, typing.signal);
      const full = (place: Place): string => place.name + (place.near ? `, ${place.near}` : "");
      const names = found.meant > 0 ? found.places.slice(0, mostOffered).map(full) : found.instead;
      offered.replaceChildren(...names.map((name) => make("option", { value: name })));
    } catch {
      // A proposal that doesn't come is none: what is typed is looked up when the loops are.
    }
  };
  input.addEventListener("input", () => void propose());
  return [input, offered];
}

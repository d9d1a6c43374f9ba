// How the page says what was found.
import { allWanted, type Answer, type Certificate, type Loop } from "./ask";
import { spoken } from "./page_parts";

const worthOfOne = 1000; // milli-units of a pass that counts in full (DEVELOPERS.md, value of a loop)

/** How good a loop is, as one says it. */
export function goodness(certificate: Certificate, answer: Answer): string {
  const { state, value, bound } = certificate;
  if (answer.shortfall) return "Not all that is asked for: see the sheet.";
  if (state === "best possible") return "Nothing better exists from here in these minutes.";
  if (state !== "within" || bound === null) return "How much better there may be isn't known.";
  if (wantsMost(answer)) {
    const more = Math.ceil((bound - value) / worthOfOne);
    return `At most ${more} more ${more === 1 ? "pass" : "passes"}, or what they are worth.`;
  }
  return `All that is asked for; at most ${bound - value} m less road driven twice.`;
}

export type Unit = "miles" | "km";

/** As the signs of the region have it: miles in the four nations, which the card's words use as well. */
export const unitOf = (region: string): Unit => (region.startsWith("GB-") ? "miles" : "km");

export const distance = (metres: number, unit: Unit): string => (metres / (unit === "miles" ? 1609.344 : 1000)).toFixed(1);

export const minutes = (seconds: number): number => Math.round(seconds / 60);

export function lasting(loop: Loop): string {
  const { low, likely, high } = loop.seconds;
  return `${minutes(likely + loop.stop_seconds)} min, likely between ${minutes(low + loop.stop_seconds)} and ${minutes(high + loop.stop_seconds)}`;
}

export function wanted(kind: string, movement: string | null): string {
  return spoken(kind) + (movement ? `, ${movement}` : "");
}

const wantsMost = (answer: Answer): boolean => allWanted(answer).some((want) => want.count === "max");

/** "15:07", so many seconds after a start such as 2026-11-28T15:00:00+00:00, on its own clock. */
export function clock(start: string, seconds: number): string {
  const [hours = 0, mins = 0, secs = 0] = start.slice(11, 19).split(":").map(Number);
  const at = Math.floor((hours * 3600 + mins * 60 + secs + seconds) / 60);
  return `${String(Math.floor(at / 60) % 24).padStart(2, "0")}:${String(at % 60).padStart(2, "0")}`;
}

/** "2026-11-28" by this computer's clock, as a field of a date takes it. */
export function today(): string {
  const at = new Date();
  return [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

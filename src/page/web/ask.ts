// What the page asks of the program, and gets.

export interface Kind { name: string; form: "junction" | "run" | "roadside" | "manoeuvre"; hardness: number; movements: string[]; met_by: string[] }
export interface Area {
  file: string; id: string; region: string; zone: string; map: string;
  extent: [number, number, number, number]; zooms: [number, number]; notes: boolean; book: boolean; kinds: Kind[];
}
export interface Place { name: string; what: string; near: string; lat: number; lon: number }
export interface Finding { places: Place[]; meant: number; why: string; instead: string[]; note: string }
export interface Job { stage: "waiting" | "working" | "over" | "broken off" | "failed"; code: number; said: string; warned: string[]; trouble: string }

export interface Pass { kind: string; movement: string | null; exit: number | null; first: number; last: number; hardness: number; confidence: string }
export interface Certificate { state: "best possible" | "within" | "searched"; value: number; bound: number | null; gap: number | null; candidates: number; left_out: number }
export interface Met { kind: string; movement: string | null; asked: number | "max"; got: number; practised?: number[] }
interface Wanted { kind: string; movement: string | null; count: number | "max" }
export interface Loop {
  id: number; start: string; end: string | null; seconds: { low: number; likely: number; high: number };
  variant?: "easier" | "harder"; parts?: { met: Met[] }[]; stop_seconds: number; metres: number; metres_twice: number;
  stretches: { arrive_s: { low: number; likely: number; high: number }; street: string; way: number; metres: number }[];
  passes: Pass[];
  bus_lanes: { first: number; side: string; verdict: string; why: string; arrive: [string, string] }[];
  met: Met[];
  certificate: Certificate;
}
export interface Answer {
  area: { region: string };
  loops: Loop[]; fewer_because: string | null;
  wish: { minutes: number | null; reserve_minutes: number; wants: Wanted[]; parts?: { wants: Wanted[] }[] };
  shortfall: { why?: string } | null;
}
export interface DriveFeature {
  type: "Feature";
  geometry: { type: "LineString"; coordinates: [number, number][] } | { type: "Point"; coordinates: [number, number] };
  properties: { what: string; [name: string]: unknown };
}
export interface Drive { type: "FeatureCollection"; features: DriveFeature[] }

/** All that is wanted, that of the parts in their order. */
export const allWanted = ({ wish }: Answer): Wanted[] => [...wish.wants, ...(wish.parts ?? []).flatMap((part) => part.wants)];
export const allMet = (loop: Loop): Met[] => [...loop.met, ...(loop.parts ?? []).flatMap((part) => part.met)];

/** A command's line as the page says it: its options are fields here, and what another command would tell is a sheet's. */
function inFormWords(line: string): string {
  const parts = line.split("; ");
  const here = parts.filter((part) => !/'loopwright [a-z]/.test(part));
  return (here.length > 0 ? here : parts).join("; ").replace(/(^|[\s(])--([a-z][a-z-]*)/g, (_, before: string, name: string) => `${before}“${name.replaceAll("-", " ")}”`);
}

/** A refusal or a failure, in the program's one line. */
export class Trouble extends Error {
  constructor(line: string) {
    super(inFormWords(line));
  }
}

export async function asked<T>(address: string, how: RequestInit = {}): Promise<T> {
  let reply: Response;
  try {
    reply = await fetch(address, how);
  } catch (failure) {
    if (failure instanceof DOMException && failure.name === "AbortError") throw failure;
    throw new Trouble("The program doesn't answer: start 'loopwright page' again and open the address it prints.");
  }
  const body = await reply.json().catch(() => ({ trouble: "the program's answer can't be read" }));
  if (!reply.ok) throw new Trouble(body.trouble);
  return body as T;
}

export const area = (): Promise<Area> => asked("/area");
export const find = (text: string, signal?: AbortSignal): Promise<Finding> =>
  asked(`/find?text=${encodeURIComponent(text)}`, signal ? { signal } : {});
/** junction: "LAT,LON" of the one that is meant by a click there. */
export const look = (lat: number, lon: number, start: string): Promise<{ said: string; junction?: string }> =>
  asked(`/look?at=${lat.toFixed(7)},${lon.toFixed(7)}&start=${encodeURIComponent(start)}`);
/** The road in what `look` said, as "Mill Street (B9952)"; empty: there is none. */
export const roadIn = (said: string): string => said.split("\n")[1]?.split(":")[0] ?? "";
export const notes = (): Promise<Drive> => asked("/notes");
export const posting = (body: object): RequestInit =>
  ({ method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
const posted = (words: [string, string][], more: object = {}): RequestInit => posting({ words, ...more });
export const addNote = (words: [string, string][]): Promise<{ said: string }> => asked("/notes", posted(words));
/** A note of the file, as GET /notes has it; number: its place in it, from 1. was: it itself, so that no other is taken for it. */
export interface Note extends DriveFeature { properties: { what: string; says: string; seen: string; [name: string]: unknown } }
export const changeNote = (number: number, was: object, words: [string, string][]): Promise<{ said: string }> => asked("/notes/change", posted(words, { number, was }));
export const dropNote = (number: number, was: object): Promise<{ said: string }> => asked("/notes/drop", posting({ number, was }));
export type Question = "near" | "ground" | "streets" | "notes";
/** What a command tells of a question, in its words. */
export const toldOf = (question: Question, words: Record<string, string> = {}): Promise<{ said: string }> =>
  asked(`/told/${question}?${new URLSearchParams(words).toString()}`);
export const lookForLoops = (words: [string, string][], effort: string): Promise<{ job: string }> =>
  asked("/loops", posted(words, { effort }));
export const job = (id: string): Promise<Job> => asked(`/jobs/${id}`);
export const breakOff = (id: string): Promise<unknown> => asked(`/jobs/${id}`, { method: "DELETE" });
export const loopsOf = (id: string): Promise<Answer> => asked(`/jobs/${id}/loops`);
export const driveOf = (id: string, loop: number): Promise<Drive> => asked(`/jobs/${id}/drive?loop=${loop}`);
export const cardAddress = (id: string, loop: number, form: string, pupil: string): string =>
  `/jobs/${id}/card?loop=${loop}&form=${form}` + (pupil ? `&pupil=${encodeURIComponent(pupil)}` : "");

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Until the job is over; none when it was broken off. told: what it said so far. */
export async function whenOver(id: string, told: (said: string) => void = () => undefined): Promise<Job | null> {
  const begun = performance.now();
  // A first loop takes about a second: who waits for it isn't kept waiting by the asking.
  for (let wait = 40; ; wait = Math.min(wait * 1.3, performance.now() - begun < 3000 ? 100 : 500)) {
    const state = await job(id);
    if (state.stage === "broken off") return null;
    if (state.trouble) throw new Trouble(state.trouble);
    if (state.stage === "over") return state;
    told(state.said);
    await pause(wait);
  }
}

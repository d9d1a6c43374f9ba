// What the page asks of the pupils' book.
import { asked, posting } from "./ask";

export interface Pupil { code: string; home: string }
export interface Skill { group: string; name: string; seen: { day: string; level: number; word: string }[] }
export interface Exposure { road: string; light: string; weather: string; traffic: string; minutes: number }
export interface LessonRow { number: number; state: string; mock: boolean; day: string; start: string; length: number; likely: number; passes: number; stepped_in: number; practice: { what: string; passes: number; wanted: boolean }[] }
export interface PupilRecord {
  code: string; home: string; scheme: string; added: string; test: string | null; ticks: Record<string, string>; avoids: string[]; my_your: boolean; level: number | null;
  skills: Skill[]; exposure: Exposure[]; lessons: LessonRow[]; told: string;
}
export type Words = [string, string][];
export type Task = "next" | "again" | "mock" | "not-met" | "like-it" | "at-home";

export const pupils = (): Promise<{ pupils: Pupil[] }> => asked("/pupils");
export const pupil = (code: string): Promise<PupilRecord> => asked(`/pupils/${code}`);
export const addPupil = (code: string, words: Words): Promise<{ said: string }> => asked(`/pupils/${encodeURIComponent(code)}/add`, posting({ words }));
export const changePupil = (code: string, words: Words): Promise<{ said: string }> => asked(`/pupils/${code}/change`, posting({ words }));
export const erasePupil = (code: string, typed: string): Promise<{ said: string }> => asked(`/pupils/${code}/erase`, posting({ code: typed }));
/** lesson: its number; null: the next that is planned. evenIf: it is still to come. */
export const logLesson = (code: string, line: string, lesson: number | null, evenIf: boolean): Promise<{ said: string }> =>
  asked(`/pupils/${code}/log`, posting({ line, ...(lesson === null ? {} : { lesson }), ...(evenIf ? { still_to_come: true } : {}) }));
export const unlogLesson = (code: string, lesson: number): Promise<{ said: string }> => asked(`/pupils/${code}/unlog`, posting({ lesson }));
export const beginTask = (code: string, task: Task, words: Words): Promise<{ job: string }> => asked(`/pupils/${code}/${task}`, posting({ words }));
export const wishOf = (job: string): Promise<{ words: Words }> => asked(`/jobs/${job}/wish`);
export const keepLoop = (job: string, keep: { pupil: string; loop: number; length: number; elsewhere: boolean }): Promise<{ said: string; code: string; lesson: number }> =>
  asked(`/jobs/${job}/keep`, posting(keep));
export const lessonAddress = (code: string, lesson: number, form: string): string => `/pupils/${code}/card?lesson=${lesson}&form=${form}`;

export interface DayLesson {
  code: string; number: number; state: string; start: string; end: string; minutes: number; practice: string[];
  away_minutes: { low: number; likely: number; high: number } | null; back_by: string; unsure: string[]; trouble: string;
}
export interface DaySheet { day: string; lessons: DayLesson[]; between: { free_minutes: number; drive_minutes: number | null; clash: string }[] }
export const beginDay = (day: string, lines: string[]): Promise<{ job: string }> => asked("/day", posting({ day, lines }));
export const dayOf = (job: string): Promise<DaySheet> => asked(`/jobs/${job}/day`);
export const dayPaper = (day: string): string => `/day?day=${day}`;

/** outline: corners, [lat, lon] each; since: the first day on which that is so. */
export interface Centre { name: string; outline: [number, number][]; hours: string; since: string }
export const centres = (): Promise<{ centres: Centre[] }> => asked("/centres");
export const keepCentre = (name: string, words: Words): Promise<{ said: string }> => asked("/centres/keep", posting({ name, words }));
export const dropCentre = (name: string): Promise<{ said: string }> => asked("/centres/drop", posting({ name }));

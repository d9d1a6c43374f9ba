// What the page asks of the program before there is an area (src/page/first_run.hpp).
import { asked, Trouble } from "./ask";

export interface BuildState {
  area: string; most_bytes: number; endings: string[];
  stage: "none" | "waiting" | "working" | "over" | "broken off" | "failed"; step: string; percent: number; trouble: string;
}

export const buildState = (): Promise<BuildState> => asked("/build");
export const breakOffBuild = (): Promise<unknown> => asked("/build", { method: "DELETE" });

/** Sends an extract as it lies on the disk; `far` is told per cent. What can be told before is asked first, since who is refused
 * in the middle may not get to read why. Why by XMLHttpRequest: fetch tells nothing of what was sent. */
export async function send(extract: File, where: { region: string; side: string }, broken: AbortSignal, far: (percent: number) => void): Promise<void> {
  const words = new URLSearchParams({ name: extract.name, region: where.region, side: where.side });
  await asked(`/extract?${words.toString()}&length=${extract.size}`, { signal: broken });
  await sent(`/extract?${words.toString()}`, extract, broken, far);
}

function sent(address: string, extract: File, broken: AbortSignal, far: (percent: number) => void): Promise<void> {
  return new Promise((done, fail) => {
    const request = new XMLHttpRequest();
    request.open("POST", address);
    request.upload.addEventListener("progress", ({ loaded, total }) => far(total > 0 ? (100 * loaded) / total : 0));
    request.addEventListener("load", () => {
      if (request.status === 200) return done();
      const told = (() => { try { return (JSON.parse(request.responseText) as { trouble?: string }).trouble; } catch { return undefined; } })();
      fail(new Trouble(told ?? "the program's answer can't be read"));
    });
    request.addEventListener("error", () => fail(new Trouble("The extract didn't get to the program: is it still running, and the file still there?")));
    request.addEventListener("abort", () => fail(new DOMException("broken off", "AbortError")));
    broken.addEventListener("abort", () => request.abort());
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.send(extract);
  });
}

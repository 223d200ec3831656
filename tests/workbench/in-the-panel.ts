/**
 * What tests ask of the panel's page: what it says, and what axe-core finds there.
 */
import axe from "axe-core";
import type { Frame, Locator } from "playwright-core";

/** Gives all that a live region has said since, in one string. */
export async function listen(region: Locator): Promise<() => Promise<string>> {
  const heard = await region.evaluateHandle((said) => {
    const words: string[] = [];
    new MutationObserver(() => words.push(said.textContent ?? "")).observe(said, { childList: true });
    return words;
  });
  return () => heard.evaluate((words) => words.join("\n"));
}

/** The page that an element is in. */
export async function frameOf(body: Locator): Promise<Frame> {
  const frame = await (await body.elementHandle())?.ownerFrame();
  if (!frame) throw new Error("The panel has no page.");
  return frame;
}

interface Violation {
  id: string;
  impact: string;
  nodes: { html: string; failureSummary: string }[];
}

/** What axe-core finds on a page that is serious or critical, as one line each. */
export async function seriousIn(frame: Frame): Promise<string[]> {
  // By the browser's own door: the page's policy lets no script in, this one neither.
  await frame.evaluate(axe.source);
  const { violations } = (await frame.evaluate("axe.run(document)")) as { violations: Violation[] };
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`));
}

/** All that VS Code for the web has put away in this browser, as text. */
export async function keptBy(): Promise<string> {
  const opened = <T>(request: IDBRequest<T>) =>
    new Promise<T>((done, failed) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => failed(request.error);
    });
  const kept: unknown[] = [];
  for (const { name } of await indexedDB.databases()) {
    const base = await opened(indexedDB.open(name as string));
    for (const store of base.objectStoreNames) {
      kept.push(await opened(base.transaction(store).objectStore(store).getAll()));
    }
    base.close();
  }
  return JSON.stringify(kept);
}

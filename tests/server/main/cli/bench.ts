import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { run } from "../../../../server/main/cli/run.ts";
import type { Services } from "../../../../server/main/put-to-work.ts";
import { services } from "../../../../server/main/services.ts";
import { exampleOf } from "../../../rule-examples.ts";

export interface Ran {
  code: number | undefined;
  out: string;
  error: string;
  served: boolean;
}

/** Runs a command line and gives what it wrote. */
export function seatwright(...args: string[]): Ran {
  return ranWith(false, ...args);
}

export function ranWith(colour: boolean, ...args: string[]): Ran {
  const { ran, ending } = begun(colour, args);
  if (ending instanceof Promise) throw new Error("this command takes its time: await `ranInTime`");
  return { ...ran, code: ending };
}

/** The same for a command that is not done at once. */
export async function ranInTime(...args: string[]): Promise<Ran> {
  const { ran, ending } = begun(false, args);
  const code = await ending;
  return { ...ran, code };
}

/** The same with other services. */
export function ranBy(others: Services, ...args: string[]): Ran {
  const { ran, ending } = begun(false, args, others);
  return { ...ran, code: ending as number | undefined };
}

function begun(colour: boolean, args: string[], served: Services = services) {
  const ran: Ran = { code: undefined, out: "", error: "", served: false };
  const ending = run(args, {
    terminal: {
      out: (text) => {
        ran.out += text;
      },
      error: (text) => {
        ran.error += text;
      },
      colour: { out: colour, error: colour },
    },
    services: served,
    exampleOf,
    serve: () => {
      ran.served = true;
    },
  });
  return { ran, ending };
}

/** A folder for one test file's chairs, gone when its tests are done; gives each file's path. */
export function chairs(files: Record<string, string | Uint8Array>): (name: string) => string {
  const folder = mkdtempSync(join(tmpdir(), "chairs-"));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return (name) => join(folder, name);
}

export const messChair = new URL("../../../../samples/boathouse-mess-chair.chair", import.meta.url).pathname;

/** A stool with one mistyped word. */
export const mistyped = `chair "Stool"
post leg pair {
  sectoin 40 x 40
  foot out 150, back 0
  height 440
}
`;

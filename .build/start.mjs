/**
 * `npm start`: the real VS Code for the web on this machine, with the extension and the samples.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./places.mjs";
import { hostWorkbench } from "./workbench/host.mjs";

const usualPort = 7380;
/** The chair that is open at first. */
const first = "boathouse-mess-chair.chair";

/** Serves until interrupted. A number among the arguments is the port to use. */
export async function start(/** @type {string[]} */ args) {
  const samples = join(root, "samples");
  const files = Object.fromEntries(
    readdirSync(samples)
      .filter((name) => name.endsWith(".chair"))
      .map((name) => [name, readFileSync(join(samples, name), "utf8")]),
  );
  const port = Number(args.find((arg) => /^\d+$/.test(arg)) ?? usualPort);
  const host = await hostWorkbench({ files, port, opens: first }).catch((error) => {
    if (error.code !== "EADDRINUSE") throw error;
    return hostWorkbench({ files, port: 0, opens: first });
  });
  console.log(`
Seatwright is at ${host.address}

Open it in a browser and press the drawing button at the top right of the editor; the other chairs are in the list at the left.
What you change there lives in the page only. Stop with Ctrl+C.
`);
  await new Promise((resolve) => process.once("SIGINT", resolve));
  await host.close();
}

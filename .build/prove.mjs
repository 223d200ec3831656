/**
 * `npm run prove NAME`: a proof over thousands of cases, of which `npm test` runs a fixed share. Each proof is a file of `proofs/` that
 * exports `prove(args)` and gives an exit code.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./places.mjs";

const folder = join(root, ".build", "proofs");

/** Runs one proof; arguments after its name are its own. Gives the exit code, 2 when there is no such proof. */
export async function prove(/** @type {string[]} */ [name = "", ...args]) {
  const names = readdirSync(folder)
    .filter((file) => file.endsWith(".mjs"))
    .map((file) => file.slice(0, -".mjs".length));
  if (!names.includes(name)) {
    console.error(`Name a proof: ${names.join(", ")}`);
    return 2;
  }
  const proof = await import(pathToFileURL(join(folder, `${name}.mjs`)).href);
  return /** @type {Promise<number>} */ (proof.prove(args));
}

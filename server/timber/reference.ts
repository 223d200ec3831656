/**
 * The species table for the language reference.
 */
import { density } from "./density.ts";
import { speciesAliases, speciesList, speciesSource, tableMoisture } from "./species.ts";

/** Markdown: each species by the word a chair file uses, then the everyday names that stand for several. */
export function speciesTable(): string {
  const rows = speciesList.map((species) => {
    const { key, name, botanical, shrinkRadial, shrinkTangential, source } = species;
    const derived = source.includes("specific gravity derived") ? " from a trade density" : "";
    const shrinks = `${shrinkRadial ?? "?"} / ${shrinkTangential ?? "?"}`;
    return `| \`${key}\` | ${name} | *${botanical}* | ${Math.round(density(species, tableMoisture))}${derived} | ${shrinks} |`;
  });
  const names = Object.entries(speciesAliases).map(
    ([alias, keys]) => `| \`${alias}\` | ${keys.map((key) => `\`${key}\``).join(", ")} |`,
  );
  return [
    "## Species",
    `What \`timber\` knows. Densities are derived, 1000 · G · (1 + M/100) at ${tableMoisture} % moisture; shrinkage is in percent from green to oven-dry, radial / tangential. Source: ${speciesSource}`,
    [
      `| word | name | botanical | kg/m³ at ${tableMoisture} % | shrinks, % |`,
      "| --- | --- | --- | --- | --- |",
      ...rows,
    ].join("\n"),
    "Everyday names that stand for one of several woods, or for another name. `timber` asks which is meant.",
    ["| name | may be |", "| --- | --- |", ...names].join("\n"),
  ].join("\n\n");
}

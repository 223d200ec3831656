/**
 * Style sheets and JSON of a wanted size, to time two well-known language services on beside ours.
 */
import { filled } from "./chairs.ts";

const colours = ["#203040", "#a0522d", "#f5deb3", "#556b2f"];

function rule(index: number): string {
  return `.part-${index} > .joint:nth-child(${(index % 5) + 1}) {
  color: ${colours[index % colours.length]};
  margin: ${index % 30}px ${index % 7}em;
  border: 1px solid ${colours[(index + 1) % colours.length]};
  transform: rotate(${index % 90}deg);
}
`;
}

/** A clean style sheet of about so many bytes. */
export function styleText(bytes: number): string {
  let text = "/* Parts of a bench, by number. */\n";
  for (let index = 0; text.length < bytes - 200; index++) text += rule(index);
  return filled(text, bytes, (words) => `/* ${words} */\n`);
}

const part = (index: number): string => `    {
      "name": "rail-${index}",
      "kind": "rail",
      "section": { "thick": ${20 + (index % 6)}, "wide": ${40 + (index % 30)} },
      "up": ${150 + (index % 300)},
      "from": "front-${index}",
      "to": "back-${index}",
      "joint": { "kind": "tenon", "thick": 8, "long": 28 }
    }`;

/** Clean JSON of about so many bytes; it has no comments, so the last name is as long as needed. */
export function jsonText(bytes: number): string {
  const open = '{\n  "title": "Bench",\n  "parts": [\n';
  const close = "\n  ],\n";
  const parts: string[] = [];
  let size = open.length + close.length + 20;
  for (let index = 0; size + 300 < bytes; index++) {
    const next = part(index);
    parts.push(next);
    size += next.length + 2;
  }
  const body = `${open}${parts.join(",\n")}${close}  "note": "`;
  return `${body}${"x".repeat(Math.max(0, bytes - body.length - 4))}"\n}\n`;
}

/** Clean YAML of about so many bytes, the same parts. */
export function yamlText(bytes: number): string {
  let text = "title: Bench\nparts:\n";
  for (let index = 0; text.length < bytes - 300; index++) {
    text += `  - name: rail-${index}
    kind: rail
    section: { thick: ${20 + (index % 6)}, wide: ${40 + (index % 30)} }
    up: ${150 + (index % 300)}
    from: front-${index}
    to: back-${index}
    joint: { kind: tenon, thick: 8, long: 28 }
`;
  }
  return filled(text, bytes, (words) => `# ${words}\n`);
}

const size = { type: "number", exclusiveMinimum: 0, maximum: 10000 };
const name = { type: "string", pattern: "^[a-z][a-z0-9-]*$", minLength: 1, maxLength: 60 };

/** What the JSON must be like: types, ranges, patterns, names that must and may stand there. */
export const jsonSchema = {
  type: "object",
  required: ["title", "parts"],
  additionalProperties: false,
  properties: {
    title: { type: "string", minLength: 1 },
    note: { type: "string" },
    parts: {
      type: "array",
      minItems: 1,
      items: {
        type: "object",
        required: ["name", "kind", "section", "up", "from", "to", "joint"],
        additionalProperties: false,
        properties: {
          name,
          kind: { enum: ["post", "rail", "slat"] },
          section: {
            type: "object",
            required: ["thick", "wide"],
            additionalProperties: false,
            properties: { thick: size, wide: size },
          },
          up: size,
          from: name,
          to: name,
          joint: {
            type: "object",
            required: ["kind"],
            additionalProperties: false,
            properties: { kind: { enum: ["tenon", "dowel"] }, thick: size, long: size },
          },
        },
      },
    },
  },
} as const;

/** How many checks a schema makes: its words that ask for something. */
export function checksOf(schema: unknown): number {
  if (Array.isArray(schema) || typeof schema !== "object" || schema === null) return 0;
  return Object.entries(schema).reduce(
    (sum, [key, value]) =>
      sum +
      (key === "properties" || key === "items" ? 0 : 1) +
      checksOf(value) -
      (typeof value === "object" && !Array.isArray(value) ? 1 : 0),
    0,
  );
}

/**
 * The outline: the chair's parts, joints, angles and lets, with the joints of a rail's ends under the rail.
 */
import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import type { Statement } from "../../grammar/tree.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { cutSizes } from "./about/about-joint.ts";
import { jointsAt, postsOf, railsOf } from "./names/chair-parts.ts";
import { headEnd } from "./names/place.ts";
import { rangeOf, type View } from "./view.ts";

/** Most symbols of one file; more would only slow the outline. */
const MOST = 5000;

const kinds: Record<string, SymbolKind> = {
  chair: SymbolKind.File,
  post: SymbolKind.Struct,
  rail: SymbolKind.Struct,
  slat: SymbolKind.Struct,
  stick: SymbolKind.Struct,
  bow: SymbolKind.Struct,
  block: SymbolKind.Struct,
  seat: SymbolKind.Struct,
  joint: SymbolKind.Interface,
  angle: SymbolKind.Number,
  let: SymbolKind.Constant,
  board: SymbolKind.Object,
  yard: SymbolKind.Object,
  load: SymbolKind.Event,
  end: SymbolKind.Key,
  require: SymbolKind.Boolean,
};

/** The blocks whose parts have joints of their own. */
const joined = new Set(["post", "rail", "slat", "stick", "bow"]);

/** The outline of one file. */
export function documentSymbols(view: View): DocumentSymbol[] {
  return view.tree.statements.slice(0, MOST).flatMap((statement) => symbolOf(view, statement) ?? []);
}

function symbolOf(view: View, statement: Statement): DocumentSymbol | undefined {
  const word = statement.word?.text;
  const kind = word === undefined ? undefined : kinds[word];
  if (word === undefined || kind === undefined) return undefined;
  const named = statement.match?.facts.find(
    ({ slot }) => slot === "name" || slot === "text" || slot === "ref",
  );
  const name = nameOf(view, statement, word);
  if (!name) return undefined;
  const range = rangeOf(view.document, statement);
  const children = [
    ...(statement.block?.statements ?? []).flatMap((child) =>
      child.word?.text === "end" ? (symbolOf(view, child) ?? []) : [],
    ),
    ...jointSymbols(view, statement, word, named?.name),
  ];
  return {
    name,
    detail: word,
    kind,
    range,
    selectionRange: rangeOf(view.document, {
      start: named?.start ?? statement.start,
      end: Math.min(named?.end ?? headEnd(statement), statement.end),
    }),
    ...(children.length && { children }),
  };
}

function nameOf(view: View, statement: Statement, word: string): string | undefined {
  const fact = statement.match?.facts.find(({ slot }) => slot === "name" || slot === "ref");
  switch (word) {
    case "chair":
      return statement.match?.facts.find(({ slot }) => slot === "text")?.text || undefined;
    case "seat":
      return "seat";
    case "require":
      return view.document.getText().slice(statement.word?.end, headEnd(statement)).trim() || undefined;
    case "end":
      return fact?.name && `end ${fact.name}`;
    default:
      return fact?.name;
  }
}

/** The joints cut on a rail's ends, the right-hand twins left out. */
function jointSymbols(
  view: View,
  statement: Statement,
  word: string,
  name: string | undefined,
): DocumentSymbol[] {
  if (!name || !joined.has(word)) return [];
  const { chair, design } = view.study;
  return jointsOf(chair, name).map((joint) => {
    const at =
      joint.at.start >= statement.start && joint.at.end <= statement.end
        ? joint.at
        : { start: statement.start, end: headEnd(statement) };
    const range = rangeOf(view.document, at);
    return {
      name: joint.name,
      detail: cutSizes(joint, design.units),
      kind: SymbolKind.Property,
      range,
      selectionRange: range,
    };
  });
}

function jointsOf(chair: Chair, name: string): Joint[] {
  const bow = chair.bows.get(name);
  const members = [...postsOf(chair, name), ...railsOf(chair, name), ...(bow ? [bow] : [])].filter(
    ({ side }) => side !== "right",
  );
  return members.flatMap((member) => jointsAt(chair, member.name).filter(({ part }) => part === member.name));
}

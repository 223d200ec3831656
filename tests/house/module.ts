/**
 * What a TypeScript module imports, types included, and which globals it uses.
 */
import { posix } from "node:path";
import { parseSync } from "vite";

export interface Module {
  path: string;
  imports: Import[];
  /** Names used freely: not as a property, a key or a name of its own. */
  globals: Set<string>;
}

export interface Import {
  /** A path from the top folder for the project's own files, else the package as written. */
  from: string;
  own: boolean;
  /** Gone at run time. */
  typeOnly: boolean;
}

interface SyntaxNode {
  type: string;
  [key: string]: unknown;
}

/** Reads one module; throws when it cannot be parsed. */
export function readModule(path: string, text: string): Module {
  const { program, errors } = parseSync(path, text);
  if (errors.length) throw new Error(`${path}: ${errors[0]?.message}`);
  const module: Module = { path, imports: [], globals: new Set() };
  const declared = new Set<string>();
  visit(program as unknown as SyntaxNode, module, declared);
  for (const name of declared) module.globals.delete(name);
  return module;
}

/** A name declared anywhere in the module counts as its own everywhere in it: coarse, but enough for names of the outside world. */
function visit(node: SyntaxNode, module: Module, declared: Set<string>): void {
  const source = sourceOf(node);
  if (source) module.imports.push(importOf(module.path, source, node));
  for (const name of namesDeclared(node)) declared.add(name);
  if (node.type === "Identifier") module.globals.add(node.name as string);
  for (const [key, value] of Object.entries(node)) {
    if (isNameOnly(node, key) || isDateArithmetic(node, key)) continue;
    for (const child of Array.isArray(value) ? value : [value])
      if (isNode(child)) visit(child, module, declared);
  }
}

/** Plain names only: what a pattern takes apart is left out. */
function namesDeclared(node: SyntaxNode): string[] {
  const declares =
    /^(Import.*Specifier|VariableDeclarator|(Function|Class)Declaration|TSTypeAliasDeclaration)$/;
  const names = declares.test(node.type) ? [node.local ?? node.id] : [];
  const params = Array.isArray(node.params) ? node.params : [];
  return [...names, ...params].flatMap((each) =>
    isNode(each) && each.type === "Identifier" ? [each.name as string] : [],
  );
}

function sourceOf(node: SyntaxNode): string | undefined {
  const carries = /^(Import|ExportNamed|ExportAll)(Declaration|Expression)$|^TSImportType$/;
  const source = carries.test(node.type) ? (node.source as SyntaxNode | null) : null;
  return typeof source?.value === "string" ? source.value : undefined;
}

function importOf(path: string, source: string, node: SyntaxNode): Import {
  const own = source.startsWith(".");
  const specifiers = (node.specifiers as SyntaxNode[] | undefined) ?? [];
  const allTypes =
    specifiers.length > 0 && specifiers.every((each) => (each.importKind ?? each.exportKind) === "type");
  const typeOnly =
    node.type === "TSImportType" || node.importKind === "type" || node.exportKind === "type" || allTypes;
  return { from: own ? posix.join(posix.dirname(path), source) : source, own, typeOnly };
}

/** Property names and keys are not uses of a global of that name. */
function isNameOnly(node: SyntaxNode, key: string): boolean {
  if (node.computed) return false;
  if (key === "property") return node.type === "MemberExpression";
  if (key !== "key") return false;
  return /Property|Method|Signature|Accessor/.test(node.type) && !node.shorthand;
}

/** Reading a date that is given is not reading the clock. */
function isDateArithmetic(node: SyntaxNode, key: string): boolean {
  const named = (value: unknown, name: string) => isNode(value) && value.name === name;
  if (key === "callee" && node.type === "NewExpression") {
    return named(node.callee, "Date") && (node.arguments as unknown[]).length > 0;
  }
  if (key === "object" && node.type === "MemberExpression") {
    return named(node.object, "Date") && (named(node.property, "UTC") || named(node.property, "parse"));
  }
  return false;
}

function isNode(value: unknown): value is SyntaxNode {
  return typeof value === "object" && value !== null && typeof (value as SyntaxNode).type === "string";
}

/**
 * What is timed: from a text to its final diagnostics, all checks on.
 */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { getCSSLanguageService } from "vscode-css-languageservice";
import { getLanguageService } from "vscode-json-languageservice";
import { TextDocument } from "vscode-languageserver-textdocument";
import { parse } from "../../grammar/parser.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { toDiagnostic } from "../../server/editor/diagnostics.ts";
import { outlineOf } from "../../server/editor/names/outline.ts";
import { rules } from "../../server/rules/index.ts";
import { study } from "../../server/study.ts";
import { chairText } from "./chairs.ts";
import { replaceNear } from "./damage.ts";
import { checksOf, jsonSchema, jsonText, styleText } from "./neighbours.ts";

export interface Subject {
  /** What checks it makes, for the report. */
  checks: string;
  text(bytes: number): string;
  /** Makes one error at about that place. */
  slip(text: string, from: number): string;
  /** How many diagnostics the text comes to. The name is new each time, so that nothing kept from before can answer. */
  diagnose(text: string, name: string): number | Promise<number>;
}

const chair: Subject = {
  checks: `${rules.length} rules`,
  text: chairText,
  slip: (text, from) => replaceNear(text, from, "  section 44 x 44", "  sectoin 44 x 44"),
  diagnose(text, name) {
    const uri = `file:///${name}.chair`;
    const document = TextDocument.create(uri, "chair", 1, text);
    const tree = parse(text, vocabulary);
    const made = study({ text, address: uri, files: noFiles, tree });
    const view = {
      uri,
      document,
      tree,
      study: made,
      outline: outlineOf(made.text, vocabulary),
      *work() {
        yield;
        return made;
      },
      lastStudy: made,
      *reread() {
        yield;
        return [];
      },
      rework: () => made.chair,
      *mend() {},
      *deepen() {},
      files: noFiles,
      ranges: new Map(),
      vocabulary,
      rules,
      other: () => undefined,
      resolve: (path: string) => path,
    };
    return made.problems.map((problem) => toDiagnostic(view, problem)).length;
  },
};

const noFiles = { resolve: (_from: string, path: string) => path, read: () => undefined };

function css(): Subject {
  const service = getCSSLanguageService();
  return {
    checks: `${lintRules()} lint rules`,
    text: styleText,
    slip: (text, from) => replaceNear(text, from, "color: #", "color #"),
    diagnose(text, name) {
      const document = TextDocument.create(`file:///${name}.css`, "css", 1, text);
      return service.doValidation(document, service.parseStylesheet(document)).length;
    },
  };
}

/** Counted in the package's own list. */
function lintRules(): number {
  const require = createRequire(import.meta.url);
  const list = require
    .resolve("vscode-css-languageservice")
    .replace(/cssLanguageService\.js$/, "services/lintRules.js");
  return [...readFileSync(list, "utf8").matchAll(/new Rule\(/g)].length;
}

function json(): Subject {
  const service = getLanguageService({});
  const schema = JSON.parse(JSON.stringify(jsonSchema));
  return {
    checks: `a schema of ${checksOf(jsonSchema)} checks`,
    text: jsonText,
    slip: (text, from) => replaceNear(text, from, '"kind": "rail"', '"kind": "wheel"'),
    async diagnose(text, name) {
      const document = TextDocument.create(`file:///${name}.json`, "json", 1, text);
      const found = await service.doValidation(
        document,
        service.parseJSONDocument(document),
        undefined,
        schema,
      );
      return found.length;
    },
  };
}

/** Made only when asked for: each process times one. */
export const subjects = { chair: () => chair, css, json };
export type SubjectName = keyof typeof subjects;

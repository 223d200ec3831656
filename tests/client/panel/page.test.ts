import { describe, expect, it } from "vitest";
import { panelPage } from "../../../client/panel/page.ts";

const page = panelPage({
  cspSource: "https://panel.example",
  nonce: "n0nce",
  script: "s.js",
  pictorial: "p.js",
  boards: "b.js",
  strength: "f.js",
  style: "s.css",
});
const policy = /Content-Security-Policy" content="([^"]+)"/.exec(page)?.[1] ?? "";

describe("the panel's page", () => {
  it("may load its own style and its own script and nothing else", () => {
    expect(policy.split("; ")).toEqual([
      "default-src 'none'",
      "style-src https://panel.example",
      "script-src 'nonce-n0nce'",
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });

  it("has no code or style in its markup", () => {
    expect(page.match(/<script[^>]*>/g)).toEqual([
      '<script nonce="n0nce" src="s.js" data-pictorial="p.js" data-boards="b.js" data-strength="f.js">',
    ]);
    expect(page).not.toMatch(/<script[^>]*>[^<]|<style|\son[a-z]+=|\sstyle=/);
  });
});

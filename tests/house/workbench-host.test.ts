/**
 * The server behind `npm start` gives out what the page needs and nothing else of the machine.
 */
import { request } from "node:http";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hostWorkbench } from "../../.build/workbench/host.mjs";

let host: Awaited<ReturnType<typeof hostWorkbench>>;
beforeAll(async () => {
  host = await hostWorkbench({ files: { "stool.chair": 'chair "Stool"\n' } });
});
afterAll(() => host.close());

/** Asks for a path as it is written, which fetch would tidy first. */
function ask(path: string): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: "127.0.0.1", port: new URL(host.address).port, path }, (response) => {
      let text = "";
      response.setEncoding("utf8").on("data", (more) => {
        text += more;
      });
      response.on("end", () => resolve({ status: response.statusCode ?? 0, text }));
    });
    asked.on("error", reject).end();
  });
}

describe("the workbench's server", () => {
  it("gives the page, VS Code, the extension and the folder", async () => {
    const page = await ask("/");
    expect(page.text).toContain("workbench.web.main.js");
    expect((await ask("/vscode/out/vs/loader.js")).status).toBe(200);
    expect(JSON.parse((await ask("/extension/package.json")).text).name).toBe("seatwright");
    expect(JSON.parse((await ask("/workspace.json")).text)).toEqual({ "stool.chair": 'chair "Stool"\n' });
  });

  it("names no other machine in its page", async () => {
    const hosts = [...(await ask("/")).text.matchAll(/https?:\/\/([^/"'<]+)/g)].map(([, name = ""]) => name);
    expect(hosts.length).toBeGreaterThan(0);
    expect(hosts.filter((name) => !/(^|\.)localhost:\d+$/.test(name))).toEqual([]);
  });

  it.each([
    "/extension/tsconfig.json",
    "/extension/dist/../tsconfig.json",
    "/extension/dist/%2e%2e/tsconfig.json",
    "/extension/dist/..%2ftsconfig.json",
    "/vscode/..%2f..%2f..%2fpackage.json",
    "/extension/dist/",
    "/nothing",
  ])("does not give %s", async (path) => {
    expect((await ask(path)).status).toBe(404);
  });

  it("survives an address that cannot be read", async () => {
    expect((await ask("/%")).status).toBe(400);
    expect((await ask("/")).status).toBe(200);
  });
});

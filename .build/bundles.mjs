/**
 * The bundles: what each is made from and where it runs.
 */
import { copyFile, mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { build } from "esbuild";
import { lateExplanations } from "./explanations.mjs";
import { noticesOf } from "./notices.mjs";
import { dist, root } from "./places.mjs";

/** Marking out, exporting, the boards' pages, strength and the server over streams are loaded when they are asked for, from the bundles beside. */
const onDemand = /** @type {import("esbuild").Plugin} */ ({
  name: "on-demand",
  setup({ onResolve }) {
    const late = /\/(markout|export|boards)\/node\.ts$|\/(strength)\/bundle\.ts$|\/cli\/(stdio)\.ts$/;
    onResolve({ filter: late }, ({ kind, path }) => {
      const name = /(\w+)(?:\/(?:node|bundle))?\.ts$/.exec(path)?.[1];
      return kind === "dynamic-import" ? { path: `./${name}.js`, external: true } : undefined;
    });
  },
});

/** Parts of the PDF library that nothing here asks for, by the names of their mixins, and where it sets them up. */
const pdfParts = ["Images", "AcroForm", "Attachments", "Subset", "Table"];
const pdfSetUps = [
  "initImages();",
  "initTables();",
  "initSubset(options);",
  "endAcroForm();",
  "_security = PDFSecurity.create(this, options);",
];
/** How it packs a page. */
const pdfPacks = "zlibSync(data)";
/** How it names a file, without what enciphers it. */
const pdfName = ["PDFSecurity.generateFileID(this.info)", "md5Hash(JSON.stringify(this.info))"];

/**
 * The PDF library without what nothing here asks of it: reading fonts, pictures, breaking lines, forms, attachments, tables, ciphers. Its build
 * for browsers runs in Node too and reads no files.
 */
const plainPdf = /** @type {import("esbuild").Plugin} */ ({
  name: "plain-pdf",
  setup({ initialOptions, onLoad, onResolve }) {
    onLoad({ filter: /pdfkit\.browser\.mjs$/ }, async ({ path }) => {
      let contents = await readFile(path, "utf8");
      const changes = [
        // Node packs pages ten times as fast itself.
        ...(initialOptions.platform === "node" ? [[pdfPacks, 'require("node:zlib").deflateSync(data)']] : []),
        ...pdfParts.map((part) => [`mixin(${part}Mixin);`, ""]),
        ...pdfSetUps.map((setUp) => [`this.${setUp}`, ""]),
        pdfName,
      ];
      for (const [line = "", instead = ""] of changes) {
        if (!contents.includes(line)) throw new Error(`The PDF library has no line "${line}" any more.`);
        contents = contents.replace(line, instead);
      }
      return { contents };
    });
    onResolve({ filter: /^pdfkit$/ }, () => ({
      path: join(root, "node_modules", "pdfkit", "js", "pdfkit.browser.mjs"),
    }));
    onResolve({ filter: /^(fontkit|linebreak|png-js|@noble\/ciphers\/aes)$/ }, () => ({
      path: join(root, ".build", "not-in-the-bundle.mjs"),
    }));
  },
});

/** The protocol's library without finding modules on disk, and without notebooks and other parts that no request here is about. */
const plainProtocol = /** @type {import("esbuild").Plugin} */ ({
  name: "plain-protocol",
  setup({ onResolve }) {
    const unasked =
      /^\.\/(notebook|files|textDocuments|callHierarchy|typeHierarchy|inlineValue|moniker|linkedEditingRange|inlineCompletion|textDocumentContent|semanticTokens|inlayHint|foldingRange|diagnostic|fileOperations)$/;
    onResolve({ filter: unasked }, ({ importer }) =>
      /vscode-languageserver[\\/]lib[\\/](common|node)[\\/][a-z]+\.js$/.test(importer)
        ? { path: join(root, ".build", "no-other-protocols.mjs") }
        : undefined,
    );
    onResolve(
      {
        filter:
          /^\.\/protocol\.(notebook|moniker|callHierarchy|typeHierarchy|inlineValue|linkedEditingRange|inlineCompletion|textDocumentContent)$/,
      },
      () => ({
        path: join(root, ".build", "no-other-protocols.mjs"),
      }),
    );
  },
});

/** What the parser's library checks of words before it reads the first one. */
const wordChecks = "performRuntimeChecks, performWarningRuntimeChecks, validatePatterns, ";

/** The parser's library without its checks of words and of a grammar and its recovery from errors. */
const plainParser = /** @type {import("esbuild").Plugin} */ ({
  name: "plain-parser",
  setup({ onLoad, onResolve }) {
    onLoad({ filter: /[\\/]chevrotain[\\/].*[\\/]lexer_public\.js$/ }, async ({ path }) => {
      const contents = await readFile(path, "utf8");
      if (!contents.includes(wordChecks))
        throw new Error(`The parser's library has no "${wordChecks}" any more.`);
      const none = join(root, ".build", "no-grammar-checks.mjs").replaceAll("\\", "/");
      return { contents: `import { ${wordChecks}} from "${none}";\n${contents.replace(wordChecks, "")}` };
    });
    onResolve({ filter: /\/checks\.js$/ }, ({ importer }) =>
      /[\\/]chevrotain[\\/]/.test(importer)
        ? { path: join(root, ".build", "no-grammar-checks.mjs") }
        : undefined,
    );
    onResolve({ filter: /\/(recoverable|follow)\.js$/ }, ({ importer }) =>
      /[\\/]chevrotain[\\/]/.test(importer) ? { path: join(root, ".build", "no-recovery.mjs") } : undefined,
    );
  },
});

const letterFiles = join(root, "node_modules", "@fontsource", "noto-sans", "files");

/** What makes sheets, files and plans explains no rule and no word: explanations and meanings stay out of it, and where its figures come from. */
const unexplained = /** @type {import("esbuild").Plugin} */ ({
  name: "unexplained",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/](server[\\/](rules|design)|grammar)[\\/].*\.ts$/ }, async ({ path }) => ({
      loader: "ts",
      contents: (await readFile(path, "utf8")).replace(
        /\b(explanation|meaning):\s*(?:"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`),/g,
        '$1: "",',
      ),
    }));
    onLoad({ filter: /[\\/]server[\\/]rules[\\/]figures\.json$/ }, async ({ path }) => ({
      loader: "json",
      contents: JSON.stringify(JSON.parse(await readFile(path, "utf8")), (key, value) =>
        key === "what" || key === "source" ? "" : value,
      ),
    }));
  },
});

const explanations = lateExplanations();

/** Where the library would look for a colour profile, which nothing here asks for. */
const noProfile = { "import.meta.url": '"file:///"', global: "globalThis" };

/** @type {Record<string, import("esbuild").BuildOptions>} */
export const bundles = {
  "client.js": {
    entryPoints: ["client/desktop.ts"],
    platform: "node",
    format: "cjs",
    external: ["vscode"],
  },
  "client-web.js": {
    entryPoints: ["client/web.ts"],
    platform: "browser",
    format: "cjs",
    external: ["vscode"],
  },
  "server.js": {
    entryPoints: ["server/main/node.ts"],
    platform: "node",
    format: "cjs",
    plugins: [plainProtocol, onDemand, explanations.plugin],
  },
  "server-web.js": {
    entryPoints: ["server/main/browser.ts"],
    platform: "browser",
    format: "iife",
    plugins: [plainProtocol],
  },
  "cli.js": {
    entryPoints: ["server/main/cli.ts"],
    platform: "node",
    format: "cjs",
    banner: { js: "#!/usr/bin/env node" },
    plugins: [onDemand, explanations.plugin],
  },
  "stdio.js": {
    entryPoints: ["server/main/cli/stdio.ts"],
    platform: "node",
    format: "cjs",
    plugins: [plainProtocol, onDemand, explanations.plugin],
  },
  "markout.js": {
    entryPoints: ["server/main/markout/node.ts"],
    platform: "node",
    format: "cjs",
    plugins: [plainPdf, unexplained],
    define: noProfile,
  },
  "markout-web.js": {
    entryPoints: ["server/main/markout/browser.ts"],
    platform: "browser",
    format: "iife",
    plugins: [plainPdf, unexplained],
    define: noProfile,
  },
  "export.js": {
    entryPoints: ["server/main/export/node.ts"],
    platform: "node",
    format: "cjs",
    plugins: [unexplained],
  },
  "export-web.js": {
    entryPoints: ["server/main/export/browser.ts"],
    platform: "browser",
    format: "iife",
    plugins: [unexplained],
    // Named by a part of the glTF library that reads files from a disk, which nothing here asks of it.
    external: ["node:fs", "node:path"],
  },
  "boards.js": {
    entryPoints: ["server/main/boards/node.ts"],
    platform: "node",
    format: "cjs",
    plugins: [plainPdf, unexplained],
    define: noProfile,
  },
  "boards-web.js": {
    entryPoints: ["server/main/boards/browser.ts"],
    platform: "browser",
    format: "iife",
    plugins: [unexplained],
  },
  "strength.js": {
    entryPoints: ["server/main/strength/bundle.ts"],
    platform: "node",
    format: "cjs",
    plugins: [unexplained],
  },
  // Found by its global name once the worker has loaded it.
  "strength-web.js": {
    entryPoints: ["server/main/strength/bundle.ts"],
    platform: "browser",
    format: "iife",
    globalName: "seatwrightStrength",
    plugins: [unexplained],
  },
  "panel.js": { entryPoints: ["client/panel/webview/main.ts"], platform: "browser", format: "iife" },
  // Turning the chair is loaded when it is asked for, and found by its global name.
  "panel-pictorial.js": {
    entryPoints: ["client/panel/webview/pictorial/main.ts"],
    platform: "browser",
    format: "iife",
    globalName: "seatwright_pictorial",
  },
  // So are the boards and the frame at work.
  "panel-boards.js": {
    entryPoints: ["client/panel/webview/boards/main.ts"],
    platform: "browser",
    format: "iife",
    globalName: "seatwright_boards",
  },
  "panel-strength.js": {
    entryPoints: ["client/panel/webview/strength/main.ts"],
    platform: "browser",
    format: "iife",
    globalName: "seatwright_strength",
  },
  "panel.css": { entryPoints: ["client/panel/webview/panel.css"] },
};

/**
 * Builds all bundles into dist, with the licences of what is in them.
 *
 * @param {{ minify?: boolean, sourcemap?: boolean }} [options] source maps are for development and never packaged
 * @returns {Promise<Record<string, import("esbuild").Metafile | undefined>>} what went into each bundle
 */
export async function buildBundles({ minify = true, sourcemap = false } = {}) {
  await rm(dist, { recursive: true, force: true });
  const made = await Promise.all(
    Object.entries(bundles).map(async ([name, options]) => {
      const { metafile } = await build({
        absWorkingDir: root,
        bundle: true,
        target: options.platform === "node" ? "node20" : "es2022",
        mainFields: options.platform === "node" ? ["module", "main"] : ["browser", "module", "main"],
        // The parser's library brings all of lodash's machinery for some forty small functions; this has the same ones, a third the size.
        alias: { "lodash-es": "es-toolkit/compat" },
        define: options.platform === "browser" ? { global: "globalThis" } : {},
        outfile: join(dist, name),
        minify,
        sourcemap,
        // Their licences are whole in notices.txt.
        legalComments: "none",
        metafile: true,
        logLevel: "warning",
        // Bundles loaded when asked for are required, in Node: imported, their text is first read through twice to find what they export.
        ...(options.platform === "node" && { supported: { "dynamic-import": false } }),
        ...options,
        plugins: [plainParser, ...(options.plugins ?? [])],
      });
      return /** @type {const} */ ([name, metafile]);
    }),
  );
  await explanations.write(dist);
  await copyExamples();
  await copyLetters();
  await writeFile(join(dist, "notices.txt"), noticesOf(made.map(([, metafile]) => metafile)));
  return Object.fromEntries(made);
}

/** The sheets' letters, from the font's package into a folder beside the bundles. */
async function copyLetters() {
  await mkdir(join(dist, "letters"), { recursive: true });
  for (const name of await readdir(letterFiles)) {
    if (/^noto-sans-(latin|vietnamese|greek|cyrillic)(-ext)?-(400|700)-normal\.woff$/.test(name))
      await copyFile(join(letterFiles, name), join(dist, "letters", name));
  }
}

/** The chair that breaks each rule, for `explain`: from beside the rules into one folder beside the command line. */
async function copyExamples() {
  await mkdir(join(dist, "examples"), { recursive: true });
  for (const room of ["grammar", "server"]) {
    for (const path of await readdir(join(root, room), { recursive: true })) {
      if (path.endsWith(".chair"))
        await copyFile(join(root, room, path), join(dist, "examples", basename(path)));
    }
  }
}

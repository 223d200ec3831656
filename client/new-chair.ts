/**
 * A new chair to start from: any kind of chair among the samples or a bare one, as an untitled file that the maker saves where they like.
 */
import { env, l10n, UIKind, Uri, window, workspace } from "vscode";
import { bareChair, fileNameFor, freshChair, kindsOfChair, titleOf } from "./fresh-chair.ts";
import { today } from "./today.ts";

/** Asks what to start from and opens it; says whether a chair was opened. */
export async function newChair(extension: Uri, language: string): Promise<boolean> {
  const folder = Uri.joinPath(extension, "samples");
  const read = (name: string) => textAt(Uri.joinPath(folder, name));
  const offers = await Promise.all(
    kindsOfChair.map(async ({ sample, about }) => {
      const text = await read(`${sample}.chair`);
      return text === undefined ? [] : [{ label: titleOf(text) ?? sample, description: about, text }];
    }),
  );
  const bare = {
    label: l10n.t("Bare chair"),
    description: l10n.t("four posts, rails and a seat"),
    text: bareChair,
  };
  const chosen = await window.showQuickPick([...offers.flat(), bare], {
    title: l10n.t("New Chair"),
    placeHolder: l10n.t("What to start from"),
    matchOnDescription: true,
  });
  if (!chosen) return false;
  const used = [...chosen.text.matchAll(/^use "([^"]+)"$/gm)].map(([, name]) => name!);
  const libraries = new Map(await Promise.all(used.map(async (name) => [name, await read(name)] as const)));
  const content = freshChair(chosen.text, (name) => libraries.get(name), today());
  await window.showTextDocument(await untitled(content, language, fileNameFor(chosen.label)));
  return true;
}

/** An untitled text; on a desktop it already has the name it will be saved under. */
async function untitled(content: string, language: string, name: string) {
  const place = workspace.workspaceFolders?.[0]?.uri;
  if (env.uiKind !== UIKind.Desktop || place?.scheme !== "file")
    return workspace.openTextDocument({ language, content });
  const uri = await freePlace(place, name);
  const document = await workspace.openTextDocument(uri.with({ scheme: "untitled" }));
  const editor = await window.showTextDocument(document);
  await editor.edit((edit) => edit.insert(document.positionAt(0), content));
  return document;
}

/** A place in a folder that no file and no open text has. */
async function freePlace(folder: Uri, name: string): Promise<Uri> {
  for (let k = 1; ; k++) {
    const uri = Uri.joinPath(folder, k === 1 ? name : name.replace(/(?=\.chair$)/, `-${k}`));
    const open = workspace.textDocuments.some(({ uri: other }) => other.path === uri.path);
    if (!open && (await textAt(uri)) === undefined) return uri;
  }
}

async function textAt(uri: Uri): Promise<string | undefined> {
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return undefined;
  }
}

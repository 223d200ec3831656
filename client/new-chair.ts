/**
 * A new chair to start from: one of the samples, as an untitled file that the maker saves where they like.
 */
import { Uri, window, workspace } from "vscode";

/** Asks which sample to start from and opens a copy of it. */
export async function newChair(extension: Uri, language: string): Promise<void> {
  const folder = Uri.joinPath(extension, "samples");
  const offers = await Promise.all(samples.map((name) => offer(Uri.joinPath(folder, `${name}.chair`), name)));
  const chosen = await window.showQuickPick(
    offers.filter((each) => each !== undefined),
    { title: "New Chair", placeHolder: "What to start from" },
  );
  if (!chosen) return;
  const document = await workspace.openTextDocument({ language, content: chosen.text });
  await window.showTextDocument(document);
}

/** Those that stand by themselves; a file that is `like` another or uses a library cannot be used without it. */
const samples = ["boathouse-mess-chair", "joined-stool"];

async function offer(uri: Uri, name: string) {
  try {
    const text = new TextDecoder().decode(await workspace.fs.readFile(uri));
    const title = /^chair "(.*)"$/m.exec(text)?.[1] ?? name;
    const first = /^# (.*)$/m.exec(text)?.[1] ?? "";
    return { label: title, description: first, text };
  } catch {
    return undefined;
  }
}

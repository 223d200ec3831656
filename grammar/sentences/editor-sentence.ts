/**
 * What mends and the editor's features say, beside what findings do: not in the bundles that make sheets, files and plans.
 */
import editor from "./editor.json" with { type: "json" };
import mends from "./mends.json" with { type: "json" };
import { sayingFrom } from "./speech.ts";

/** Every sentence of mends and of the editor's features by its key. */
export const editorEnglish = { ...mends, ...editor };

export const editorSentence = sayingFrom(editorEnglish);

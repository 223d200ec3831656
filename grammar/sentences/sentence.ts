/**
 * Everything that findings say, in one catalogue: whole sentences with named values, one file a room. The English here is what a
 * translation translates; `client/l10n/bundle.l10n.json` lists it for translators, with what the editor's own windows say.
 */
import chair from "./chair.json" with { type: "json" };
import design from "./design.json" with { type: "json" };
import reading from "./reading.json" with { type: "json" };
import rules from "./rules.json" with { type: "json" };
import { sayingFrom } from "./speech.ts";
import words from "./words.json" with { type: "json" };

/** Every sentence by its key. */
export const english = { ...words, ...reading, ...design, ...chair, ...rules };

export type SentenceKey = keyof typeof english;

export const sentence = sayingFrom(english);

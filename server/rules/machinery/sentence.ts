import english from "./sentences.json" with { type: "json" };

/** The sentences that rules say, by their keys; a translation has the same keys. */
type SentenceKey = keyof typeof english;

/** A whole sentence with its named values put in: `{thick}` becomes the value of that name. */
export const sentence = (key: SentenceKey, values: Readonly<Record<string, string | number>>): string =>
  english[key].replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));

/**
 * How sentences are said: in the language at hand, their values put in as `vscode.l10n` does.
 */
let translated: Readonly<Record<string, string>> = {};

/** From now on sentences are those of this translation, by their English; what it lacks stays English. */
export function speak(translation: Readonly<Record<string, string>>): void {
  translated = translation;
}

type Values = Readonly<Record<string, string | number | undefined>>;

/** A sentence in the language at hand with its values put in: `{thick}` becomes the value of that name. */
export const said = (english: string, values: Values): string =>
  (Object.hasOwn(translated, english) ? translated[english]! : english).replace(
    /\{([^}]+)\}/g,
    (whole, name: string) => String(values[name] ?? whole),
  );

/** Says the sentences of a catalogue by their keys. */
export const sayingFrom =
  <Key extends string>(english: Readonly<Record<Key, string>>) =>
  (key: Key, values: Values = {}): string =>
    said(english[key], values);

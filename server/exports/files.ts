/** A file to be written; a name without a folder. */
export interface ExportFile {
  name: string;
  bytes: Uint8Array;
}

/** A part's name as a file's: safe on any disk. */
export const fileName = (name: string, ending: string): string =>
  `${name.replace(/[^a-z0-9.-]+/gi, "-").replace(/^[-.]+|[-.]+$/g, "") || "part"}.${ending}`;

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

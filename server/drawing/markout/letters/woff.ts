import { unzlibSync } from "fflate";

/** The tables of a font in the Web Open Font Format 1.0 (W3C Recommendation, 2012), by their tags. Throws on bytes of another kind. */
export function tablesOf(bytes: Uint8Array): Map<string, Uint8Array> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint32(0) !== 0x774f4646) throw new TypeError("These bytes are no font in WOFF.");
  const tables = new Map<string, Uint8Array>();
  for (let k = 0; k < view.getUint16(12); k++) {
    const entry = 44 + 20 * k;
    const tag = String.fromCharCode(...bytes.subarray(entry, entry + 4));
    const [start, packed, whole] = [4, 8, 12].map((by) => view.getUint32(entry + by)) as [
      number,
      number,
      number,
    ];
    const data = bytes.subarray(start, start + packed);
    // A table that packing would not make smaller stands as it is.
    tables.set(tag, packed < whole ? unzlibSync(data) : data);
  }
  return tables;
}

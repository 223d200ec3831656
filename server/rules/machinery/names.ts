import { withoutSides } from "../../design/identity.ts";

/** A part's name without its side: both of a pair are reported together. */
export const plain = withoutSides;

/** Two parts' names, each without its side unless they are of one pair: `aft.left` and `aft.right`. */
export const plainBoth = (one: string, other: string): { one: string; other: string } =>
  plain(one) === plain(other) ? { one, other } : { one: plain(one), other: plain(other) };

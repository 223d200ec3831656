import { withoutSides } from "../../design/identity.ts";
/** A part's name without its side: both of a pair are reported together. */
export const plain = withoutSides;

import { withoutSides } from "../../design/identity.ts";
/** A part's name without its side: both of a pair are told of together. */
export const plain = withoutSides;

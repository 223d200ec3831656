/** A part's name without its side: both of a pair are told of together. */
export const plain = (name: string): string => name.replace(/\.(left|right)(?=[. ]|$)/g, "");

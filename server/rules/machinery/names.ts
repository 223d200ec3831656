/** A part's name without its side: both of a pair are reported together. */
export const plain = (name: string): string => name.replace(/\.(left|right)(?=[. ]|$)/g, "");

/**
 * Stands in for packages that the PDF library imports and that nothing here has it use.
 */
function absent() {
  throw new Error(
    "The sheets are written without pictures and ciphers, and their letters are read elsewhere.",
  );
}

export const create = absent;
export const cbc = absent;
export const ecb = absent;

export default class Absent {
  constructor() {
    absent();
  }
}

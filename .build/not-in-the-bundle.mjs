/**
 * Stands in for packages that the PDF library imports and that nothing here has it use.
 */
function absent() {
  throw new Error("The sheets are written with standard fonts and without pictures.");
}

export const create = absent;

export default class Absent {
  constructor() {
    absent();
  }
}

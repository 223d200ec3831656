/** How many flats stand for a circle of that radius in solids and drawings. */
export const facetsOf = (radius: number): number => (radius <= 12 ? 24 : 32);

/**
 * The radius of the regular polygon with as much area as the circle, so that volume and weight of turned work are true; its corners
 * stand out by a half and its flats fall in by a half of one percent or less.
 */
export function facetRadius(radius: number, facets: number): number {
  const step = (2 * Math.PI) / facets;
  return radius * Math.sqrt(step / Math.sin(step));
}

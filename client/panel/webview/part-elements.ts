/** Everything drawn for one part, in all views: what is marked when the part is pointed at. */
export type PartElements = Map<string, SVGElement[]>;

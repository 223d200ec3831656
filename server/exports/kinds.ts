/** What a chair can be exported as. */
export interface ExportKind {
  kind: "3mf" | "gltf" | "stl" | "step" | "dxf";
  ending: string;
  /** A file for every part instead of one of the chair. */
  each?: true;
  /** What it is, for a list to choose from. */
  label: string;
  about: string;
}

export const exportKinds: readonly ExportKind[] = [
  { kind: "3mf", ending: "3mf", label: "3MF", about: "solids for printing and viewing, mm" },
  {
    kind: "gltf",
    ending: "glb",
    label: "glTF",
    about: "the chair to look at in viewers and on pages, metres",
  },
  {
    kind: "stl",
    ending: "stl",
    each: true,
    label: "STL",
    about: "a solid in a file of its own for each part, mm",
  },
  { kind: "step", ending: "step", label: "STEP", about: "exact flat-faced solids for CAD, mm" },
  {
    kind: "dxf",
    ending: "dxf",
    label: "DXF",
    about: "templates, outlines and planned boards at full size, by layers, mm",
  },
];

export const kindNamed = (name: unknown): ExportKind | undefined =>
  exportKinds.find(({ kind }) => kind === name);

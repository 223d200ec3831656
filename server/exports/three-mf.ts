import { strToU8, zipSync } from "fflate";
import type { Motion } from "../geometry/solid.ts";
import type { ModelPart } from "./model.ts";

/** What a reader of the file should be told. */
export interface About {
  title: string;
  version: string;
  /** Written into the zip's entries, so that the same text gives the same bytes: milliseconds as the local clock has them. */
  stamp: number;
}

const CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

/** A 3MF package of the whole chair, mm: every part an object by its name, set where it stands. 3MF Core Specification 1.x. */
export function threeMf(parts: readonly ModelPart[], about: About): Uint8Array {
  const objects = parts.map(({ name, mesh }, k) => {
    const vertices = mesh.points.map(
      ([x, y, z]) => `<vertex x="${number(x)}" y="${number(y)}" z="${number(z)}"/>`,
    );
    const triangles = mesh.triangles.map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`);
    return `<object id="${k + 1}" type="model" name="${escaped(name)}"><mesh><vertices>${vertices.join("")}</vertices><triangles>${triangles.join("")}</triangles></mesh></object>`;
  });
  const items = parts.map(({ place }, k) => `<item objectid="${k + 1}" transform="${transform(place)}"/>`);
  const model = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="${CORE}"><metadata name="Title">${escaped(about.title)}</metadata><metadata name="Application">Seatwright ${escaped(about.version)}</metadata><resources>
${objects.join("\n")}
</resources><build>
${items.join("\n")}
</build></model>
`;
  return zipSync(
    {
      "[Content_Types].xml": strToU8(
        '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n',
      ),
      "_rels/.rels": strToU8(
        '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="model" Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n',
      ),
      "3D/3dmodel.model": strToU8(model),
    },
    { mtime: about.stamp },
  );
}

/** Places after the point in mm: ten times finer than what counts as one point. */
const number = (value: number): string => `${Number(value.toFixed(7))}`;

/** Rows of a matrix that a row of coordinates is multiplied by, as the format has it. */
function transform({ rotation, shift }: Motion): string {
  const columns = ([0, 1, 2] as const).flatMap((k) => rotation.map((row) => Number(row[k].toFixed(12))));
  return [...columns, ...shift.map((value) => number(value))].join(" ");
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]!);

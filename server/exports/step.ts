import { movePlane, movePoint } from "../geometry/motion.ts";
import { type ShellEdge, shellEdges } from "../geometry/shell.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { cross, distance, dot, sub, unit } from "../geometry/vec.ts";
import type { ModelPart } from "./model.ts";
import type { About } from "./three-mf.ts";

/** What the file says is one place, mm; corners lie nearer than this to the planes of their faces. */
const UNCERTAINTY = 1e-5;

/** Whether a part can be written as flat faces: every corner in the planes of its faces, no edge shorter than what is one place. */
export function isFlatFaced({ shell }: ModelPart): boolean {
  const edges = shellEdges(shell);
  if (!edges) return false;
  const inPlanes = shell.faces.every(({ plane, outer, holes }) =>
    [outer, ...holes].every((loop) =>
      loop.every((k) => Math.abs(dot(plane.normal, shell.points[k]!) - plane.offset) < UNCERTAINTY / 2),
    ),
  );
  return (
    inPlanes && edges.every(({ from, to }) => distance(shell.points[from]!, shell.points[to]!) > UNCERTAINTY)
  );
}

/**
 * STEP AP214 (ISO 10303-21, -214) of the chair as it stands, mm: every part a product by its name with one solid of flat faces in the
 * planes it was worked out in.
 */
export function step(
  parts: readonly ModelPart[],
  { title, version }: Pick<About, "title" | "version">,
): string {
  const out = new Entities();
  const application = out.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
  out.add(
    `APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,${application})`,
  );
  const productContext = out.add(`PRODUCT_CONTEXT('',${application},'mechanical')`);
  const definitionContext = out.add(`PRODUCT_DEFINITION_CONTEXT('part definition',${application},'design')`);
  const mm = out.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
  const radian = out.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
  const steradian = out.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
  const uncertainty = out.add(
    `UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(${real(UNCERTAINTY)}),${mm},'distance_accuracy_value','')`,
  );
  const space = out.add(
    `(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((${uncertainty}))GLOBAL_UNIT_ASSIGNED_CONTEXT((${mm},${radian},${steradian}))REPRESENTATION_CONTEXT('',''))`,
  );
  for (const part of parts) {
    const name = quoted(part.name);
    const solid = solidOf(out, part, name);
    const axes = placement(out, [0, 0, 0], [0, 0, 1], [1, 0, 0]);
    const shape = out.add(`ADVANCED_BREP_SHAPE_REPRESENTATION(${name},(${axes},${solid}),${space})`);
    const product = out.add(`PRODUCT(${name},${name},'',(${productContext}))`);
    const formation = out.add(`PRODUCT_DEFINITION_FORMATION('','',${product})`);
    const definition = out.add(`PRODUCT_DEFINITION('design','',${formation},${definitionContext})`);
    const definitionShape = out.add(`PRODUCT_DEFINITION_SHAPE('','',${definition})`);
    out.add(`SHAPE_DEFINITION_REPRESENTATION(${definitionShape},${shape})`);
    out.add(`PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(${product}))`);
  }
  // The time is fixed, so that the same text gives the same bytes.
  return `ISO-10303-21;
HEADER;
FILE_DESCRIPTION((${quoted(title)}),'2;1');
FILE_NAME(${quoted(title)},'1980-01-01T00:00:00',(''),(''),${quoted(`Seatwright ${version}`)},'','');
FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));
ENDSEC;
DATA;
${out.text()}ENDSEC;
END-ISO-10303-21;
`;
}

class Entities {
  private readonly lines: string[] = [];
  private readonly known = new Map<string, string>();

  add(entity: string): string {
    const number = `#${this.lines.length + 1}`;
    this.lines.push(`${number}=${entity};\n`);
    return number;
  }

  /** The same again is the same: directions and points that many use. */
  once(entity: string): string {
    const known = this.known.get(entity) ?? this.add(entity);
    this.known.set(entity, known);
    return known;
  }

  text(): string {
    return this.lines.join("");
  }
}

function solidOf(out: Entities, { shell, place }: ModelPart, name: string): string {
  const points = shell.points.map((p) => movePoint(place, p));
  const corners = points.map((p) => {
    const at = point(out, p);
    return { at, vertex: out.add(`VERTEX_POINT('',${at})`) };
  });
  const edges = new Map<string, string>();
  for (const { from, to } of shellEdges(shell) as ShellEdge[]) {
    const run = sub(points[to]!, points[from]!);
    const vector = out.add(`VECTOR('',${direction(out, unit(run))},1.)`);
    const curve = out.add(`LINE('',${corners[from]!.at},${vector})`);
    const edge = out.add(`EDGE_CURVE('',${corners[from]!.vertex},${corners[to]!.vertex},${curve},.T.)`);
    edges.set(`${from} ${to}`, out.add(`ORIENTED_EDGE('',*,*,${edge},.T.)`));
    edges.set(`${to} ${from}`, out.add(`ORIENTED_EDGE('',*,*,${edge},.F.)`));
  }
  const faces = shell.faces.map(({ plane, outer, holes }) => {
    const { normal } = movePlane(place, plane);
    const across = unit(cross(normal, Math.abs(normal[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
    const surface = out.add(`PLANE('',${placement(out, points[outer[0]!]!, normal, across)})`);
    const bounds = [outer, ...holes].map((loop, k) => {
      const around = loop.map((from, j) => edges.get(`${from} ${loop[(j + 1) % loop.length]!}`)!);
      const ring = out.add(`EDGE_LOOP('',(${around.join(",")}))`);
      return out.add(`${k === 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND"}('',${ring},.T.)`);
    });
    return out.add(`ADVANCED_FACE('',(${bounds.join(",")}),${surface},.T.)`);
  });
  const closed = out.add(`CLOSED_SHELL('',(${faces.join(",")}))`);
  return out.add(`MANIFOLD_SOLID_BREP(${name},${closed})`);
}

const placement = (out: Entities, at: Vec3, axis: Vec3, across: Vec3): string =>
  out.add(`AXIS2_PLACEMENT_3D('',${point(out, at)},${direction(out, axis)},${direction(out, across)})`);

const point = (out: Entities, p: Vec3): string =>
  out.once(`CARTESIAN_POINT('',(${p.map((v) => real(v)).join(",")}))`);

const direction = (out: Entities, d: Vec3): string =>
  out.once(`DIRECTION('',(${d.map((v) => real(v, 15)).join(",")}))`);

/** A real by ISO 10303-21: always with a point, here never with an exponent. */
function real(value: number, places = 9): string {
  const text = value.toFixed(places).replace(/0+$/, "");
  return text === "-0." ? "0." : text;
}

/** A string by ISO 10303-21: apostrophes twice, what is not plain ASCII as UTF-16. */
function quoted(text: string): string {
  const plain = text
    .replaceAll("\\", "\\\\")
    .replaceAll("'", "''")
    .replace(/[^ -~]+/g, (run) => {
      const units = Array.from({ length: run.length }, (_, k) =>
        run.charCodeAt(k).toString(16).toUpperCase().padStart(4, "0"),
      );
      return `\\X2\\${units.join("")}\\X0\\`;
    });
  return `'${plain}'`;
}

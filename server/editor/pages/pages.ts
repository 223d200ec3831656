/**
 * The pages that tell of a chair: one report a kind.
 */
import type { Study } from "../../study.ts";
import { fitReport } from "./fit.ts";
import { gluingUpReport } from "./gluing-up.ts";
import { type PageKind, pageTitles } from "./kinds.ts";
import { markdownOf, type Report } from "./report.ts";
import { stanceReport } from "./stance.ts";
import { valuesReport } from "./values.ts";

const reports: Record<PageKind, (title: string, study: Study) => Report> = {
  stance: (title, { chair }) => stanceReport(title, chair),
  fit: (title, { chair }) => fitReport(title, chair),
  gluingUp: (title, { chair }) => gluingUpReport(title, chair),
  values: valuesReport,
};

/** A page of a chair as Markdown; `name` is what it is called where it has no title. */
export const page = (kind: PageKind, study: Study, name: string): string =>
  markdownOf(pageTitles[kind], reports[kind](study.design.title?.value ?? name, study));

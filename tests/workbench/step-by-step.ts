/**
 * Tests whose steps follow each other in one workbench.
 */
import { join } from "node:path";
import { beforeEach } from "vitest";
import { root } from "../house/project-files.ts";
import type { Workbench } from "./workbench.ts";

/**
 * Each step begins where the one before ended, so after a failure the rest says nothing; what the screen was like then is kept under this
 * name. To be called once a file, outside its tests.
 */
export function stepByStep(name: string, workbench: () => Workbench): void {
  let failed = false;
  beforeEach(({ skip, onTestFailed }) => {
    skip(failed, "an earlier step failed");
    onTestFailed(async () => {
      failed = true;
      await workbench().page.screenshot({ path: join(root, ".cache", `${name}-failed.png`) });
    });
  });
}

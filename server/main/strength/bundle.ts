/**
 * What works out how strong a chair is and how its wood moves, as a bundle of its own: the servers load it once the first findings are shown.
 */
export { lateSteps } from "../../strength/late.ts";

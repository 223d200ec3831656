/**
 * The version of this build, from the package.
 */
export { version } from "../../package.json";

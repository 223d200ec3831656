import { plain } from "../range/files.ts";

/** The plain chair, its tenons mitred where they meet and its timber one whose strength is known: no error is found of it. */
export const sound = (more = ""): string =>
  plain(more)
    .replace("tenon thick 1/3 of rail, long 22", "tenon thick 1/3 of rail, long 26\n  mitre")
    .replace("european-ash", "white-ash");

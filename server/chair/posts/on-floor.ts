import type { PostDesign } from "../../design/design.ts";

/** Whether a post stands on the floor, not on a rail or on a solid seat. */
export const isOnFloor = ({ standsOn, onSeat }: PostDesign): boolean => !standsOn && !onSeat;

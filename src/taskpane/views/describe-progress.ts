import type { JobProgress } from "../../planning/commissioning/reports";
import { countOf } from "../elements/count-of";

/** Says in one line how far a job is; what is nought is left out. */
export function describeProgress({ state, build, steps, done, differ, again, snags, passedHolds, minutesLeft, fault }: JobProgress): string {
  if (state === "no tab") return "No tab yet";
  const parts = [
    `Build ${build}`,
    state === "closed" ? "closed and sealed" : "",
    `${done} of ${countOf(steps, "step")} settled`,
    differ > 0 ? `${differ} differ` : "",
    again > 0 ? `${again} to be seen again` : "",
    snags > 0 ? `${countOf(snags, "snag")} open` : "",
    passedHolds > 0 ? `work went past ${countOf(passedHolds, "hold point")}` : "",
    minutesLeft > 0 ? `${describeMinutes(minutesLeft)} left` : "",
    fault === "" ? "" : `not to be trusted yet: ${fault}`,
  ];
  return parts.filter((part) => part !== "").join(" · ");
}

/** Writes minutes as hours and minutes: 340 is 5 h 40 min. */
function describeMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  return [hours > 0 ? `${hours} h` : "", rest > 0 || hours === 0 ? `${rest} min` : ""].filter((part) => part !== "").join(" ");
}

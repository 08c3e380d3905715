import { kilograms, type Kilograms } from "../quantity";
import { frequencyMultiplier } from "./lift-frequency";

/** How well a load can be gripped (NIOSH publication 94-110, table 6). */
export type Grip = "good" | "fair" | "poor";

/** A lift by one person with two hands. */
export interface Lift {
  /** Hands from the middle between the ankles, in centimetres. */
  readonly horizontal: number;
  /** The same where the lift ends; as at the beginning where it is left out. */
  readonly horizontalAtEnd?: number;
  /** Hands above the floor where the lift begins and where it ends, in centimetres. */
  readonly from: number;
  readonly to: number;
  /** Turn of the body to the side, in degrees. */
  readonly angle: number;
  /** The same where the lift ends; as at the beginning where it is left out. */
  readonly angleAtEnd?: number;
  readonly liftsPerMinute: number;
  /** Hours of lifting a day, at most 8. */
  readonly hours: number;
  readonly grip: Grip;
}

/** Recommended weight limits of a lift. */
export interface LiftLimits {
  readonly origin: Kilograms;
  readonly destination: Kilograms;
  /** The lower of the two. */
  readonly limit: Kilograms;
}

/** Weight in kilograms that nearly every healthy worker can lift where nothing stands against it. */
const loadConstant = 23;

/**
 * Computes the recommended weight limits of a lift where it begins and where it ends, by the revised NIOSH lifting equation.
 *
 * RWL = LC·HM·VM·DM·AM·FM·CM (Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) publication 94-110), in metric units
 * and unrounded; the manual's examples round every multiplier to two places. Reach, height, turn and grip are taken at each end; distance and
 * frequency are those of the whole lift, and the frequency multiplier goes by the height at the beginning. Out of reach (over 63 cm away,
 * over 175 cm high, turned by more than 135°, too often) the limit is 0.
 *
 * It is made for one person with two hands on dry, even ground, standing: not for a team, one hand, kneeling, carrying, or cramped space.
 */
export function liftLimit(lift: Lift): LiftLimits {
  const shared = loadConstant * distanceMultiplier(Math.abs(lift.to - lift.from)) * frequencyMultiplier(lift.liftsPerMinute, lift.hours, lift.from);
  const at = (height: number, horizontal: number, angle: number): Kilograms =>
    kilograms(shared * horizontalMultiplier(horizontal) * verticalMultiplier(height) * asymmetryMultiplier(angle) * couplingMultiplier(lift.grip, height));
  const origin = at(lift.from, lift.horizontal, lift.angle);
  const destination = at(lift.to, lift.horizontalAtEnd ?? lift.horizontal, lift.angleAtEnd ?? lift.angle);
  return { origin, destination, limit: origin < destination ? origin : destination };
}

/** HM = 25/H; 1 nearer than 25 cm, 0 beyond 63 cm (table 1). */
export function horizontalMultiplier(horizontal: number): number {
  return horizontal > 63 ? 0 : Math.min(1, 25 / horizontal);
}

/** VM = 1 − 0.003·|V − 75|; 0 above 175 cm (table 2). */
export function verticalMultiplier(height: number): number {
  return height > 175 ? 0 : 1 - 0.003 * Math.abs(height - 75);
}

/** DM = 0.82 + 4.5/D; 1 under 25 cm, 0 beyond 175 cm (table 3). */
export function distanceMultiplier(distance: number): number {
  if (distance <= 25) return 1;
  return distance > 175 ? 0 : 0.82 + 4.5 / distance;
}

/** AM = 1 − 0.0032·A; 0 beyond 135° (table 4). */
export function asymmetryMultiplier(angle: number): number {
  return angle > 135 ? 0 : 1 - 0.0032 * angle;
}

/** CM of table 7: from 75 cm up a fair grip costs nothing. */
function couplingMultiplier(grip: Grip, height: number): number {
  if (grip === "good") return 1;
  if (grip === "poor") return 0.9;
  return height < 75 ? 0.95 : 1;
}

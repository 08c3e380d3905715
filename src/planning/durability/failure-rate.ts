import { hoursPerYear, type Hours, type Share } from "../quantity";
import { logOfComplement } from "./complement";

/** Computes the annual failure rate of a drive with the mean time to failure `mttf`: 1 - exp(-8760 / MTTF), failures exponential. */
export function annualFailureRate(mttf: Hours): number {
  return -Math.expm1(-hoursPerYear / mttf);
}

/** Computes the failures an hour behind an annual failure rate below 1: -ln(1 - AFR) / 8760. */
export function hourlyFailureRate(afr: Share): number {
  return -logOfComplement(afr) / hoursPerYear;
}

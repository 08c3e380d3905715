import type { Watts } from "../quantity";

/** Joules of one British thermal unit of the International Table (Fifth International Conference on the Properties of Steam, 1956). */
const joulesPerBtu = 1055.05585262;

/** BTU an hour of one ton of refrigeration. */
const btuPerHourPerTon = 12_000;

/** Units of heat flow that cooling is bought in. */
export type HeatUnit = "btu/h" | "tons";

/** Converts electrical power to the heat it gives off, in BTU(IT) an hour or tons of refrigeration: all of it becomes heat. */
export function heat(watts: Watts, unit: HeatUnit): number {
  const btuPerHour = (watts * 3600) / joulesPerBtu;
  return unit === "btu/h" ? btuPerHour : btuPerHour / btuPerHourPerTon;
}

/** Hours of the year that every yearly figure counts with: 365 days. */
export const hoursPerYear = 8760;
export const secondsPerHour = 3600;

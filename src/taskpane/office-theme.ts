import type { Theme } from "./pane-host";

/**
 * Tells the theme by the host's background colour, such as "#262626"; high contrast where the system asks for it.
 *
 * `background` asks the host, which may have no theme, or throw as it has no call to ask for one: it is light then.
 */
export function themeOf(background: () => string | undefined, contrast: boolean): Theme {
  if (contrast) return "contrast";
  const [, red, green, blue] = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(asked(background)) ?? [];
  if (red === undefined || green === undefined || blue === undefined) return "light";
  const [r, g, b] = [red, green, blue].map((digits) => parseInt(digits, 16)) as [number, number, number];
  // Rec. 709 luma tells a dark ground from a light one well enough.
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < 128 ? "dark" : "light";
}

function asked(background: () => string | undefined): string {
  try {
    return background() ?? "";
  } catch {
    return "";
  }
}
